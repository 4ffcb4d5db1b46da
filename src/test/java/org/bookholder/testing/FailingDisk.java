package org.bookholder.testing;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.bookholder.files.Access;
import org.bookholder.files.Disk;
import org.bookholder.files.FileOperations;

/** The machine's disk, but for one step that fails; notes the steps that were asked for. */
public final class FailingDisk implements FileOperations {
    private final Disk disk = new Disk();
    private final Predicate<String> failing;
    private final List<String> steps = new ArrayList<>();

    /** Fails where {@code failing} holds of the step and the count of steps of that kind, such as "move 2". */
    public FailingDisk(Predicate<String> failing) {
        this.failing = failing;
    }

    /** Steps that were asked for, in order, such as "move 2". */
    public List<String> steps() {
        return steps;
    }

    @Override
    public OutputStream create(Path file, Access access) throws IOException {
        step("create");
        OutputStream out = disk.create(file, access);
        return new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                write(new byte[] {(byte) b}, 0, 1);
            }

            @Override
            public void write(byte[] bytes, int from, int count) throws IOException {
                out.write(bytes, from, count / 2);
                step("write");
                out.write(bytes, from + count / 2, count - count / 2);
            }

            @Override
            public void close() throws IOException {
                out.close();
                step("close");
            }
        };
    }

    @Override
    public void force(Path file) throws IOException {
        step("force");
        disk.force(file);
    }

    @Override
    public void keepAs(Path file, Path second) throws IOException {
        step("keepAs");
        disk.keepAs(file, second);
    }

    @Override
    public void move(Path from, Path to) throws IOException {
        step("move");
        disk.move(from, to);
    }

    @Override
    public void forceFolder(Path folder) throws IOException {
        step("forceFolder");
        disk.forceFolder(folder);
    }

    @Override
    public void delete(Path file) throws IOException {
        step("delete");
        disk.delete(file);
    }

    private void step(String kind) throws IOException {
        long before = steps.stream().filter(s -> s.startsWith(kind + " ")).count();
        String step = kind + " " + (before + 1);
        steps.add(step);
        if (failing.test(step)) {
            throw new IOException("no " + step);
        }
    }
}
