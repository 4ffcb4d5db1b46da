package org.bookholder.view.gl;

import java.util.List;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.view.Frame;
import org.bookholder.view.Scene;
import org.bookholder.view.settings.WindowPlace;
import org.bookholder.view.settings.WindowSettings;

/** Draws single pictures that nobody sees, for tests that look at pixels. Needs a display. */
final class Easel implements AutoCloseable {
    private final int width;
    private final int height;
    private final Window window;
    private final Fonts fonts = new Fonts(List::of);
    private final Shaper shaper = new Shaper(fonts);
    private final Texts texts = new Texts(shaper);
    private final Canvas canvas;
    private final Painter painter;

    private Easel(int width, int height) throws ProblemException {
        this.width = width;
        this.height = height;
        window = Window.open(Glfw.start(), "", WindowPlace.hidden(width, height));
        canvas = new Canvas();
        painter = new Painter(canvas, texts);
    }

    static Easel of(int width, int height) throws ProblemException {
        return new Easel(width, height);
    }

    /** A scene as large as the picture, on a monitor that says nothing of its size. */
    Scene scene(Script script, WindowSettings settings) {
        return new Scene(script, settings, shaper, new Scene.Screen(width, height, height, 0), ReadingPosition.START);
    }

    Snapshot draw(Frame view) {
        painter.paint(view);
        return Snapshot.read(width, height);
    }

    @Override
    public void close() {
        texts.close();
        canvas.close();
        fonts.close();
        window.close();
    }
}
