package org.bookholder.delivery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.settings.SettingsFile;
import org.bookholder.settings.SettingsText;
import org.bookholder.settings.SettingsText.Values;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ProfileFormTest {
    @Test
    void theShownFormCanBeReadBack() throws ProblemException {
        Profile usual = ProfileForm.usual();
        Profile again = profile(String.join("\n", ProfileForm.lines(usual)));

        assertThat(ProfileForm.lines(again)).isEqualTo(ProfileForm.lines(usual));
        assertThat(again.limits()).hasSameSizeAs(ProfileSetting.values());
    }

    @Test
    void missingSettingsAreNotChecked() throws ProblemException {
        Profile profile = profile("# ours\nheight: at least 720   # small\n\n");

        assertThat(profile.limits()).containsOnlyKeys(ProfileSetting.HEIGHT);
        assertThat(profile.range(ProfileSetting.HEIGHT)).contains(new Limit.Between(720, Double.POSITIVE_INFINITY));
    }

    @Test
    void theLastSettingStays(@TempDir Path folder) throws ProblemException, IOException {
        SettingsFile file = new SettingsFile(folder.resolve("delivery.txt"), "the profile");
        Files.writeString(file.path(), "height: at least 720\nrate: 25\n");

        ProfileForm.set(file, "rate", "");
        assertThatThrownBy(() -> ProfileForm.set(file, "height", ""))
                .hasMessageContaining("a profile checks at least one thing");
        assertThat(file.path()).hasContent("height: at least 720\n");
    }

    @Test
    void wordsMayBeAList() throws ProblemException {
        assertThat(profile("rate: [24, 25]\n").words(ProfileSetting.RATE))
                .contains(new Limit.OneOf(List.of("24", "25")));
    }

    @Test
    void aPatternIsReadAsEarlierVersionsWroteIt() throws ProblemException {
        Profile profile = profile("name: [a-z]+[.]mp4   # small letters\n");

        assertThat(profile.pattern(ProfileSetting.NAME).orElseThrow().text()).isEqualTo("[a-z]+[.]mp4");
    }

    @Test
    void aNameIsWrittenAsAForm() throws ProblemException {
        Limit.Matching name = profile("name: {lesson}_final.mp4\n")
                .pattern(ProfileSetting.NAME)
                .orElseThrow();

        assertThat(name.text()).isEqualTo("{lesson}_final.mp4");
        assertThat(name.allows("lesson-1_final.mp4")).isTrue();
        assertThat(name.allows("lesson 1_final.mp4")).isFalse();
        assertThat(name.allows("lesson-1_finalXmp4")).as("the dot is a dot").isFalse();
    }

    @Test
    void rangesIncludeTheirEnds() throws ProblemException {
        Limit.Between loudness =
                profile("loudness: -18 to -14.5").range(ProfileSetting.LOUDNESS).orElseThrow();
        assertThat(loudness.allows(-18)).isTrue();
        assertThat(loudness.allows(-14.5)).isTrue();
        assertThat(loudness.allows(-14.4)).isFalse();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "heigth: at least 1080 | there is no setting 'heigth'",
                "height: 1080 | '1080' is not a range for 'height'",
                "height: | 'height' says nothing",
                "loudness: -14 to -18 | the range of 'loudness' is empty",
                "name: [a-z | 'name' is neither a form of a name nor a regular expression",
                "audio | 'audio' says nothing",
                "container: mkv | 'container' is given twice"
            })
    void aWrongLineAffectsNoOtherLine(String line, String message) throws ProblemException {
        Values<Limit> values = values("container: mp4\n" + line + "\nsilent: at most 5\n");
        assertThat(values.wrong())
                .singleElement()
                .satisfies(problem -> assertThat(problem).hasMessageStartingWith("delivery.txt:2: " + message));
        Profile profile = ProfileForm.of(values, "delivery.txt");
        assertThat(profile.words(ProfileSetting.CONTAINER)).contains(new Limit.OneOf(List.of("mp4")));
        assertThat(profile.most(ProfileSetting.SILENT)).isEqualTo(5);
    }

    @Test
    void aValueThatCannotBeUnderstoodIsCheckedAsUsual() throws ProblemException {
        Profile profile = profile("container: mp4\nheight: tall\n");
        assertThat(profile.range(ProfileSetting.HEIGHT))
                .isEqualTo(ProfileForm.usual().range(ProfileSetting.HEIGHT));
        assertThat(profile.limits()).containsOnlyKeys(ProfileSetting.CONTAINER, ProfileSetting.HEIGHT);
    }

    @Test
    void aProfileThatSetsNothing() {
        assertThatThrownBy(() -> profile("# nothing yet\n"))
                .hasMessage("delivery.txt: sets nothing; begin with what bookholder check --show-profile prints");
    }

    private static Profile profile(String text) throws ProblemException {
        return ProfileForm.of(values(text), "delivery.txt");
    }

    private static Values<Limit> values(String text) {
        return SettingsText.of(text, "delivery.txt").read(ProfileForm.FORM);
    }
}
