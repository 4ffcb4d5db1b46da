package org.bookholder.handoff.pickups;

import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.HandOffPartContract;

final class TakeLogPartTest extends HandOffPartContract {
    @Override
    protected HandOffPart part() {
        return new TakeLogPart();
    }
}
