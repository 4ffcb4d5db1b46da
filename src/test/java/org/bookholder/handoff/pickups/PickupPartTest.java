package org.bookholder.handoff.pickups;

import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.HandOffPartContract;

final class PickupPartTest extends HandOffPartContract {
    @Override
    protected HandOffPart part() {
        return new PickupPart();
    }
}
