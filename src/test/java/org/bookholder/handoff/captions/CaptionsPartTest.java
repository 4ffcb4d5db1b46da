package org.bookholder.handoff.captions;

import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.HandOffPartContract;

final class CaptionsPartTest extends HandOffPartContract {
    @Override
    protected HandOffPart part() {
        return new CaptionsPart();
    }
}
