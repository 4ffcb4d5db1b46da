package org.bookholder.app.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.jobs.JobStatus.Step;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
final class JobsTest {
    private static final JobResult NOTHING = new JobResult("Nothing to mend.", List.of(), List.of());

    private final AtomicBoolean reading = new AtomicBoolean();
    private final List<Throwable> faults = new ArrayList<>();
    private final Jobs jobs = new Jobs(reading::get, faults::add);

    @Test
    void aJobTellsHowFarItHasComeAndWhatCameOfIt() {
        List<JobStatus> during = new ArrayList<>();
        int id = jobs.add(job(false, control -> {
            control.reached(new Progress("lesson-1.mp4", 0.25, OptionalDouble.of(30)));
            control.say("take 1 begins at 3.2 s");
            during.addAll(jobs.all());
            return NOTHING;
        }));
        assertThat(jobs.goOn()).isTrue();

        assertThat(jobs.work(false)).isTrue();

        assertThat(during.get(0).step()).isEqualTo(Step.RUNNING);
        assertThat(during.get(0).progress().orElseThrow().done()).isEqualTo(0.25);
        assertThat(during.get(0).said()).containsExactly("take 1 begins at 3.2 s");
        assertThat(only().id()).isEqualTo(id);
        assertThat(only().step()).isEqualTo(Step.DONE);
        assertThat(only().result()).contains(NOTHING);
        assertThat(jobs.goOn()).isFalse();
        jobs.dismiss(id);
        assertThat(jobs.all()).isEmpty();
    }

    @Test
    void aProblemIsToldAndTheNextJobIsDone() {
        jobs.add(job(false, control -> {
            throw new ProblemException("the file cannot be read", "a.mp4", "check the disk it is on");
        }));
        jobs.add(job(false, control -> NOTHING));

        assertThat(jobs.work(false)).isTrue();
        assertThat(jobs.work(false)).isTrue();
        assertThat(jobs.work(false)).isFalse();

        assertThat(jobs.all().get(0).step()).isEqualTo(Step.FAILED);
        assertThat(jobs.all().get(0).problem()).isEqualTo("a.mp4: the file cannot be read; check the disk it is on");
        assertThat(jobs.all().get(1).step()).isEqualTo(Step.DONE);
        assertThat(faults).isEmpty();
    }

    @Test
    void aFaultOfTheProgramIsReportedAndEndsThatJobOnly() {
        IllegalStateException fault = new IllegalStateException("broken");
        jobs.add(job(false, control -> {
            throw fault;
        }));
        jobs.add(job(false, control -> NOTHING));
        jobs.work(false);
        jobs.work(false);

        assertThat(faults).containsExactly(fault);
        assertThat(jobs.all().get(0).problem()).contains("A fault of the program", "broken");
        assertThat(jobs.all().get(1).step()).isEqualTo(Step.DONE);
    }

    @Test
    void aJobThatWaitsIsStoppedAtOnceAndOneThatRunsBetweenItsSteps() {
        List<Step> during = new ArrayList<>();
        int first = jobs.add(job(false, control -> {
            jobs.stop(only().id());
            during.add(only().step());
            control.stop().check();
            return NOTHING;
        }));
        assertThat(jobs.work(false)).isTrue();
        assertThat(during).containsExactly(Step.STOPPING);
        assertThat(only().step()).isEqualTo(Step.STOPPED);
        assertThat(only().result()).isEmpty();
        jobs.dismiss(first);

        jobs.stop(jobs.add(job(false, control -> NOTHING)));
        assertThat(jobs.work(false)).isFalse();
        assertThat(only().step()).isEqualTo(Step.STOPPED);
    }

    @Test
    void theResultOfAStoppedJobIsKept() {
        jobs.add(job(false, control -> {
            jobs.stopAll();
            return control.stop().requested() ? NOTHING : new JobResult("went on", List.of(), List.of());
        }));
        jobs.work(false);
        assertThat(only().step()).isEqualTo(Step.STOPPED);
        assertThat(only().result()).contains(NOTHING);
    }

    @Test
    void aJobThatListensIsNotBegunWhileALessonIsRead() {
        reading.set(true);
        jobs.add(job(true, control -> NOTHING));
        jobs.add(job(false, control -> NOTHING));

        assertThat(jobs.work(true)).isFalse();
        assertThat(jobs.work(false)).isTrue();
        assertThat(jobs.all().get(0).held()).isTrue();
        assertThat(jobs.all().get(1).step()).isEqualTo(Step.DONE);

        reading.set(false);
        assertThat(jobs.work(true)).isTrue();
        assertThat(jobs.all().get(0).step()).isEqualTo(Step.DONE);
        assertThat(jobs.all().get(0).held()).isFalse();
    }

    @Test
    void aJobThatListensIsHeldWhileALessonIsReadAndGoesOnAfterIt() throws InterruptedException {
        CountDownLatch begun = new CountDownLatch(1);
        jobs.add(job(true, control -> {
            reading.set(true);
            begun.countDown();
            control.stop().check();
            return NOTHING;
        }));
        Thread worker = new Thread(() -> jobs.work(true), "listening jobs");
        worker.start();
        begun.await();
        while (!only().held()) {
            Thread.onSpinWait();
        }
        assertThat(only().step()).isEqualTo(Step.RUNNING);
        reading.set(false);
        worker.join();
        assertThat(only().step()).isEqualTo(Step.DONE);
    }

    @Test
    void aJobThatIsHeldCanBeStopped() throws InterruptedException {
        jobs.add(job(true, control -> {
            reading.set(true);
            control.stop().check();
            return NOTHING;
        }));
        Thread worker = new Thread(() -> jobs.work(true), "listening jobs");
        worker.start();
        while (!only().held()) {
            Thread.onSpinWait();
        }
        jobs.stopAll();
        worker.join();
        assertThat(only().step()).isEqualTo(Step.STOPPED);
    }

    @Test
    void onlyTheLastJobsThatHaveEndedAreRemembered() {
        int waiting = jobs.add(job(true, control -> NOTHING));
        for (int i = 0; i < 30; i++) {
            jobs.add(job(false, control -> NOTHING));
            jobs.work(false);
        }
        assertThat(jobs.all()).hasSize(22);
        assertThat(jobs.all().get(0).id()).isEqualTo(waiting);
    }

    private JobStatus only() {
        assertThat(jobs.all()).hasSize(1);
        return jobs.all().get(0);
    }

    private static Job job(boolean listens, Job.Work work) {
        return new Job("check", "Check", "lesson-1.mp4", listens, "it has no new result", work);
    }
}
