package org.bookholder.speech.microphone;

import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import org.bookholder.speech.AudioRead;

/** A program that listens until its microphone is gone, and says what happens on standard output. */
final class PulledOut {
    private PulledOut() {}

    public static void main(String[] arguments) throws Exception {
        Microphone microphone = Microphone.open(Optional.empty(), Microphone.PREFERRED_RATE, System::nanoTime);
        boolean heard = false;
        AudioRead read = microphone.read();
        while (!(read instanceof AudioRead.Gone)) {
            if (read instanceof AudioRead.Samples && !heard) {
                heard = true;
                System.out.println("listening");
            }
            LockSupport.parkNanos(5_000_000L);
            read = microphone.read();
        }
        System.out.println("gone: " + ((AudioRead.Gone) read).reason());
        microphone.close();
        System.out.println("closed");
    }
}
