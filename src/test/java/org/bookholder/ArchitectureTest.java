package org.bookholder;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static java.util.Map.entry;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.bookholder.cli.Installed;
import org.bookholder.cli.Main;
import org.bookholder.handoff.Exporter;
import org.bookholder.handoff.HandOffPart;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

final class ArchitectureTest {
    private static final String ROOT = "org.bookholder";

    /** The reading order. A package may use those before it, never those after it. */
    static final List<String> PIPELINE = List.of(
            "problem",
            "files",
            "settings",
            "timing",
            "script",
            "speech",
            "sound",
            "footage",
            "follow",
            "pace",
            "fatigue",
            "session",
            "journal",
            "cutlist",
            "wording",
            "view",
            "desk",
            "handoff",
            "course",
            "delivery",
            "runtime",
            "film",
            "app",
            "cli");

    /**
     * The reading order inside a package. A room may use those before it and not those after it; what lies in the
     * package itself comes last, and {@code view.gl} after that.
     */
    static final Map<String, List<String>> ROOMS = Map.of(
            "script", List.of("model", "normalize", "source", "pronounce"),
            "follow", List.of("model", "graph", "evidence", "live", "judge", "settle"),
            "journal", List.of("event", "sqlite"),
            "view", List.of("input", "settings", "layout", "motion", "cue", "page"),
            "runtime", List.of("stage", "source", "record", "take", "recovery"),
            "film", List.of("format", "plan", "program", "picture", "sound", "words"),
            "app",
                    List.of(
                            "environment",
                            "jobs",
                            "session",
                            "script",
                            "handoff",
                            "desk",
                            "reading",
                            "review",
                            "course",
                            "footage",
                            "delivery",
                            "film",
                            "sound",
                            "work",
                            "home"));

    /** The outputs made from a session; none uses another. */
    private static final List<String> OUTPUTS = List.of("view", "desk", "handoff");

    /** Each technology has one home, or, for the window library, one home for each of its parts. */
    private static final Map<String, String> HOME = Map.ofEntries(
            entry("org.lwjgl.openal..", ROOT + ".speech.microphone"),
            entry("org.lwjgl.glfw..", ROOT + ".view.gl"),
            entry("org.lwjgl.opengl..", ROOT + ".view.gl"),
            entry("org.lwjgl.util..", ROOT + ".view.gl"),
            entry("org.lwjgl.stb..", ROOT + ".view.gl"),
            entry("javax.sound..", ROOT + ".speech.wav"),
            entry("org.vosk..", ROOT + ".speech.vosk"),
            entry("com.sun.jna..", ROOT + ".speech.vosk"),
            entry("com.ibm.icu..", ROOT + ".script"),
            entry("org.commonmark..", ROOT + ".script.source"),
            entry("org.jsoup..", ROOT + ".script.source"),
            entry("org.mozilla.universalchardet..", ROOT + ".script.source"),
            entry("org.apache.poi..", ROOT + ".script.source"),
            entry("net.fortuna.ical4j..", ROOT + ".course.calendar"),
            entry("org.snakeyaml..", ROOT + ".settings"),
            entry("org.bytedeco..", ROOT + ".footage.ffmpeg"),
            entry("org.jtransforms..", ROOT + ".footage|" + ROOT + ".sound"),
            entry("org.apache.commons.csv..", ROOT + ".handoff"),
            entry("org.apache.pdfbox..", ROOT + ".handoff.pdf|" + ROOT + ".script.source"),
            entry("com.github.difflib..", ROOT + ".session|" + ROOT + ".script.source"),
            entry("org.eclipse.jetty..", ROOT + ".desk.http"),
            entry("org.slf4j..", ROOT + ".desk.http"),
            entry("java.sql..", ROOT + ".journal.sqlite"),
            entry("picocli..", ROOT + ".cli"),
            entry("java.util.concurrent..", ROOT + ".runtime"));

    /** Classes outside {@code files} that create or rename files themselves, each for a reason of its own. */
    private static final Map<String, String> OWN_FILES = Map.ofEntries(
            entry("TakeRecording", "a take is written as it is recorded, and must be readable at any moment"),
            entry("SessionFolder", "a take left by a kill is renamed, and takes are repaired in place"),
            entry("OverflowMerge", "missing sound is written into the middle of a take"),
            entry("SecondPlace", "a private folder in the temporary folder"),
            entry("TakeHeaders", "the header of a take is written over in place"),
            entry("WavSource", "a recording is only read"),
            entry("StoredTrack", "a temporary file of hours of sound"),
            entry("ModelFolder", "a temporary folder that shows the recogniser another model"),
            entry("Terminal", "standard output and error"));

    /** The program's own classes without the tests, read from where its main class was compiled to. */
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .importUrl(Main.class.getProtectionDomain().getCodeSource().getLocation());

    @TestFactory
    Stream<DynamicTest> packagesUseOnlyEarlierOnes() {
        return IntStream.range(0, PIPELINE.size())
                .mapToObj(i -> dynamicTest(PIPELINE.get(i), () -> {
                    String[] later = PIPELINE.stream()
                            .skip(i + 1L)
                            .map(p -> ROOT + "." + p + "..")
                            .toArray(String[]::new);
                    noClasses()
                            .that()
                            .resideInAPackage(ROOT + "." + PIPELINE.get(i) + "..")
                            .should()
                            .dependOnClassesThat(resideInAnyPackage(later))
                            .allowEmptyShould(true)
                            .because("the reading order is " + String.join(" -> ", PIPELINE))
                            .check(CLASSES);
                }));
    }

    @TestFactory
    Stream<DynamicTest> roomsUseOnlyEarlierOnes() {
        return ROOMS.entrySet().stream().flatMap(rooms -> {
            String inside = ROOT + "." + rooms.getKey();
            List<String> order = rooms.getValue();
            return IntStream.range(0, order.size())
                    .mapToObj(i -> dynamicTest(rooms.getKey() + "." + order.get(i), () -> {
                        List<String> later = new ArrayList<>(List.of(inside));
                        order.stream()
                                .skip(i + 1L)
                                .map(r -> inside + "." + r + "..")
                                .forEach(later::add);
                        noClasses()
                                .that()
                                .resideInAPackage(inside + "." + order.get(i) + "..")
                                .should()
                                .dependOnClassesThat(resideInAnyPackage(later.toArray(String[]::new)))
                                .because("the reading order in " + rooms.getKey() + " is " + String.join(" -> ", order))
                                .check(CLASSES);
                    }));
        });
    }

    @Test
    void packagesFormNoCircle() {
        slices().matching(ROOT + ".(**)").should().beFreeOfCycles().check(CLASSES);
    }

    @Test
    void everyPackageIsInTheReadingOrder() {
        String[] known = PIPELINE.stream().map(p -> ROOT + "." + p + "..").toArray(String[]::new);
        classes().should().resideInAnyPackage(known).check(CLASSES);
    }

    @TestFactory
    Stream<DynamicTest> technologiesStayAtHome() {
        return HOME.entrySet().stream()
                .map(e -> dynamicTest(
                        e.getKey(),
                        () -> noClasses()
                                .that()
                                .resideOutsideOfPackages(Stream.of(e.getValue().split("\\|", -1))
                                        .map(home -> home + "..")
                                        .toArray(String[]::new))
                                .should()
                                .dependOnClassesThat(resideInAPackage(e.getKey())
                                        .and(describe("make or share threads", c -> !c.isEquivalentTo(Callable.class))))
                                .because(e.getKey() + " belongs in " + e.getValue())
                                .check(CLASSES)));
    }

    @Test
    void outputsDoNotKnowEachOther() {
        for (String output : OUTPUTS) {
            String[] others = OUTPUTS.stream()
                    .filter(o -> !o.equals(output))
                    .map(o -> ROOT + "." + o + "..")
                    .toArray(String[]::new);
            noClasses()
                    .that()
                    .resideInAPackage(ROOT + "." + output + "..")
                    .should()
                    .dependOnClassesThat(resideInAnyPackage(others))
                    .allowEmptyShould(true)
                    .check(CLASSES);
        }
    }

    @Test
    void everyExporterIsInstalled() {
        Set<String> written = CLASSES.stream()
                .filter(c -> c.isAssignableTo(Exporter.class) && !c.isInterface())
                .map(JavaClass::getName)
                .collect(Collectors.toSet());
        Set<String> installed =
                Installed.exporters().stream().map(e -> e.getClass().getName()).collect(Collectors.toSet());
        assertEquals(written, installed);
    }

    @Test
    void everyPartOfAHandOffIsInstalledUnderANameOfItsOwn() {
        Set<String> written = CLASSES.stream()
                .filter(c -> c.isAssignableTo(HandOffPart.class) && !c.isInterface())
                .map(JavaClass::getName)
                .collect(Collectors.toSet());
        assertEquals(
                written,
                Installed.handOffParts().stream()
                        .map(p -> p.getClass().getName())
                        .collect(Collectors.toSet()));
        assertEquals(
                written.size(),
                Installed.handOffParts().stream()
                        .map(HandOffPart::name)
                        .distinct()
                        .count());
    }

    @Test
    void smallFilesAreWrittenInOneWay() {
        noClasses()
                .that()
                .resideOutsideOfPackage(ROOT + ".files")
                .and(describe(
                        "have no reason of their own",
                        c -> !OWN_FILES.containsKey(outermost(c).getSimpleName())))
                .should()
                .accessTargetWhere(writesFiles())
                .because("a small file is replaced whole, and readable by its owner only: see AtomicFiles")
                .check(CLASSES);
    }

    @Test
    void everyExceptionToTheFileRuleIsStillNeeded() {
        Set<String> writers = CLASSES.stream()
                .filter(c -> c.getAccessesFromSelf().stream().anyMatch(writesFiles()))
                .map(c -> outermost(c).getSimpleName())
                .collect(Collectors.toSet());
        assertTrue(writers.containsAll(OWN_FILES.keySet()), () -> OWN_FILES.keySet() + " must all be among " + writers);
    }

    private static JavaClass outermost(JavaClass c) {
        return c.getEnclosingClass().map(ArchitectureTest::outermost).orElse(c);
    }

    @Test
    void threadsAreMadeInOneRoom() {
        noClasses()
                .that()
                .resideOutsideOfPackage(ROOT + ".runtime.stage")
                .should()
                .dependOnClassesThat()
                .areAssignableTo(Thread.class)
                .check(CLASSES);
    }

    @Test
    void onlyTheCommandLineReadsTheMachineClock() {
        noClasses()
                .that()
                .resideOutsideOfPackage(ROOT + ".cli")
                .should()
                .accessTargetWhere(readsTheMachineClock())
                .check(CLASSES);
    }

    @Test
    void onlyTheCommandLineUsesTheTerminal() {
        Set<String> members = Set.of("out", "err", "in", "console", "exit");
        noClasses()
                .that()
                .resideOutsideOfPackage(ROOT + ".cli")
                .should()
                .accessTargetWhere(describe(
                        "the process's own streams are used or the process is ended",
                        access -> access.getTargetOwner().getName().equals("java.lang.System")
                                && members.contains(access.getTarget().getName())))
                .because("services are called by the command line and by a page alike: see decision 0170")
                .check(CLASSES);
    }

    @Test
    void everyPackageIsNullMarked() {
        Set<String> packages = CLASSES.stream().map(JavaClass::getPackageName).collect(Collectors.toSet());
        Set<String> marked = CLASSES.stream()
                .filter(c -> c.getSimpleName().equals("package-info") && c.isAnnotatedWith(NullMarked.class))
                .map(JavaClass::getPackageName)
                .collect(Collectors.toSet());
        assertEquals(packages, marked);
    }

    @Test
    void staticFieldsAreFinal() {
        fields().that().areStatic().should().beFinal().check(CLASSES);
    }

    @Test
    void whatStaticFieldsHoldNeverChanges() {
        fields().that().areStatic().should(StaticState.NEVER_CHANGE).check(CLASSES);
    }

    /** Folders for others, such as that of a hand-off, may be created as the system has it; those are left out here. */
    private static DescribedPredicate<JavaAccess<?>> writesFiles() {
        Set<String> methods = Set.of(
                "write",
                "writeString",
                "newBufferedWriter",
                "newOutputStream",
                "newByteChannel",
                "copy",
                "move",
                "createFile",
                "createTempFile",
                "createTempDirectory");
        Set<String> writers = Set.of("java.io.FileOutputStream", "java.io.FileWriter", "java.io.RandomAccessFile");
        return describe("a file is written", access -> {
            String owner = access.getTargetOwner().getName();
            String name = access.getTarget().getName();
            return (owner.equals("java.nio.file.Files") && methods.contains(name))
                    || (writers.contains(owner) && name.equals("<init>"));
        });
    }

    /** Covers calls and method references alike; a callMethod rule lets {@code System::nanoTime} through. */
    private static DescribedPredicate<JavaAccess<?>> readsTheMachineClock() {
        return describe("the machine's clock is read", access -> {
            String owner = access.getTargetOwner().getName();
            return switch (access.getTarget().getName()) {
                case "nanoTime", "currentTimeMillis" -> owner.equals("java.lang.System");
                case "now" ->
                    owner.startsWith("java.time.")
                            && access.getTarget() instanceof CodeUnitAccessTarget target
                            && target.getRawParameterTypes().isEmpty();
                case "system", "systemUTC", "systemDefaultZone" -> owner.startsWith("java.time.");
                case "sleep" -> owner.equals("java.lang.Thread");
                case "<init>" ->
                    owner.equals("java.util.Date")
                            && access.getTarget() instanceof CodeUnitAccessTarget t
                            && t.getRawParameterTypes().isEmpty();
                default -> false;
            };
        });
    }
}
