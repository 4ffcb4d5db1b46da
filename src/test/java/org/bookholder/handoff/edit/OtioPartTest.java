package org.bookholder.handoff.edit;

import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.HandOffPartContract;

final class OtioPartTest extends HandOffPartContract {
    @Override
    protected HandOffPart part() {
        return new OtioPart();
    }
}
