package org.bookholder.view.gl;

import java.util.function.IntSupplier;
import org.lwjgl.opengl.ARBRobustness;
import org.lwjgl.opengl.GL;
import org.lwjgl.opengl.GL11;

/**
 * Notices that the graphics driver has lost the window's context: after a crash of the graphics processor, a driver that was
 * replaced, or on some machines a sleep. Nothing is drawn then any more, without any error. Main thread only.
 */
final class ContextWatch {
    private final IntSupplier status;

    /** Watches by {@code status}, which gives 0 while all is well (as glGetGraphicsResetStatusARB does). */
    ContextWatch(IntSupplier status) {
        this.status = status;
    }

    /** Watches the current context, if its driver tells (GL_ARB_robustness). */
    static ContextWatch ofCurrent() {
        boolean tells = GL.getCapabilities().GL_ARB_robustness;
        return new ContextWatch(tells ? ARBRobustness::glGetGraphicsResetStatusARB : () -> GL11.GL_NO_ERROR);
    }

    /**
     * Asks the driver.
     *
     * @throws IllegalStateException if the context is lost; a new window can be opened
     */
    void check() {
        int reset = status.getAsInt();
        if (reset != GL11.GL_NO_ERROR) {
            throw new IllegalStateException("the graphics driver has lost the window's picture (reset status 0x"
                    + Integer.toHexString(reset) + ")");
        }
    }
}
