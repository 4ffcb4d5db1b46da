package org.bookholder.view.gl;

import static org.lwjgl.opengl.GL33C.GL_COMPILE_STATUS;
import static org.lwjgl.opengl.GL33C.GL_FRAGMENT_SHADER;
import static org.lwjgl.opengl.GL33C.GL_LINK_STATUS;
import static org.lwjgl.opengl.GL33C.GL_VERTEX_SHADER;
import static org.lwjgl.opengl.GL33C.glAttachShader;
import static org.lwjgl.opengl.GL33C.glCompileShader;
import static org.lwjgl.opengl.GL33C.glCreateProgram;
import static org.lwjgl.opengl.GL33C.glCreateShader;
import static org.lwjgl.opengl.GL33C.glDeleteShader;
import static org.lwjgl.opengl.GL33C.glGetProgramInfoLog;
import static org.lwjgl.opengl.GL33C.glGetProgrami;
import static org.lwjgl.opengl.GL33C.glGetShaderInfoLog;
import static org.lwjgl.opengl.GL33C.glGetShaderi;
import static org.lwjgl.opengl.GL33C.glLinkProgram;
import static org.lwjgl.opengl.GL33C.glShaderSource;

/** The only shader program: coverage (from a texture, or full) times colour, faded towards the edges of the picture. */
final class Shaders {
    private static final String VERTEX = """
            #version 330 core
            layout(location = 0) in vec2 place;
            layout(location = 1) in vec2 texel;
            layout(location = 2) in vec4 colour;
            uniform vec2 size;
            uniform vec2 flip;
            out vec2 at;
            out vec4 tint;
            out float height;
            void main() {
                at = texel;
                tint = colour;
                height = place.y;
                vec2 unit = vec2(place.x * 2.0 / size.x - 1.0, 1.0 - place.y * 2.0 / size.y);
                gl_Position = vec4(unit * flip, 0.0, 1.0);
            }
            """;

    private static final String FRAGMENT = """
            #version 330 core
            in vec2 at;
            in vec4 tint;
            in float height;
            uniform sampler2D coverage;
            uniform vec4 fade;
            out vec4 result;
            void main() {
                float cover = at.x < 0.0 ? 1.0 : texture(coverage, at).r;
                float edge = smoothstep(fade.x, fade.y, height) * (1.0 - smoothstep(fade.z, fade.w, height));
                float light = cover * edge * tint.a;
                result = vec4(tint.rgb * light, light);
            }
            """;

    private Shaders() {}

    /** Compiles and links the program. */
    static int program() {
        int vertex = shader(GL_VERTEX_SHADER, VERTEX);
        int fragment = shader(GL_FRAGMENT_SHADER, FRAGMENT);
        int program = glCreateProgram();
        glAttachShader(program, vertex);
        glAttachShader(program, fragment);
        glLinkProgram(program);
        if (glGetProgrami(program, GL_LINK_STATUS) == 0) {
            throw new IllegalStateException("the shaders do not link: " + glGetProgramInfoLog(program));
        }
        glDeleteShader(vertex);
        glDeleteShader(fragment);
        return program;
    }

    private static int shader(int kind, String source) {
        int shader = glCreateShader(kind);
        glShaderSource(shader, source);
        glCompileShader(shader);
        if (glGetShaderi(shader, GL_COMPILE_STATUS) == 0) {
            throw new IllegalStateException("a shader does not compile: " + glGetShaderInfoLog(shader));
        }
        return shader;
    }
}
