package org.bookholder.handoff.sound;

import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.HandOffPartContract;

final class TakesPartTest extends HandOffPartContract {
    @Override
    protected HandOffPart part() {
        return new TakesPart();
    }
}
