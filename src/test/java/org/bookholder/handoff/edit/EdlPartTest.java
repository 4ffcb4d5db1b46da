package org.bookholder.handoff.edit;

import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.HandOffPartContract;

final class EdlPartTest extends HandOffPartContract {
    @Override
    protected HandOffPart part() {
        return new EdlPart();
    }
}
