package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.error.UserFacingException;
import weltwright.sheath.hardware.HardwareList;

class MakerDefaultsFileTest {
    private static final LocalDate DAY = LocalDate.of(2024, 5, 6);

    @TempDir
    private Path folder;

    private MakerDefaultsFile file() {
        return new MakerDefaultsFile(folder.resolve("settings").resolve("defaults.json"));
    }

    @Test
    void readsWhatItWrote() {
        MakerDefaults mine = new MakerDefaults(
                List.of(2.5, 3.175),
                List.of(3.0),
                List.of(0.8, 1.0),
                4,
                45,
                Optional.of(HardwareList.USUAL),
                Map.of("leather thickness", "2.5 mm, 8 oz"));
        file().write(mine);
        assertThat(file().read()).isEqualTo(mine);
        MakerDefaults without = mine.withHardware(Optional.empty());
        file().write(without);
        assertThat(file().read()).isEqualTo(without);
    }

    @Test
    void aJobBeginsWithTheFirstOfEachList() {
        MakerDefaults mine = MakerDefaults.USUAL
                .withLeathersMm(List.of(3.175, 2.5))
                .withPitchesMm(List.of(3.0, 4.0))
                .withThreadsMm(List.of(0.6, 0.8))
                .withTyped(Map.of("leather thickness", "8 oz, 2.5 mm"));
        Job job = mine.begin(DAY, HardwareList.USUAL);
        assertThat(job.spec().leather().thicknessMm()).isEqualTo(3.175);
        assertThat(job.spec().stitching().pitchMm()).isEqualTo(3);
        assertThat(job.spec().stitching().threadMm()).hasValue(0.6);
        assertThat(mine.threadTexts()).containsExactly("0.6 mm", "0.8 mm");
        assertThat(job.typedText("leather thickness")).contains("8 oz");
        assertThat(mine.leatherTexts()).containsExactly("8 oz", "2.5 mm");
        assertThat(mine.withTyped(Map.of("leather thickness", "8 oz, 2.5")).leatherTexts())
                .containsExactly("8 oz", "2.5 mm");
        assertThat(mine.pitchTexts()).containsExactly("3 mm", "4 mm");
    }

    @Test
    void readsAFileWithOneLeatherAndOneIron() throws IOException {
        Files.createDirectories(folder.resolve("settings"));
        Files.writeString(
                file().file(),
                "{\"format\":\"weltwright defaults\",\"version\":1,\"units\":\"mm\",\"leather\":2.5,\"pitch\":3,"
                        + "\"stitch_margin\":3,\"belt_width\":38,\"hardware\":null,\"typed\":{}}");
        assertThat(file().read().leathersMm()).containsExactly(2.5);
        assertThat(file().read().pitchesMm()).containsExactly(3.0);
        assertThat(file().read().threadsMm()).isEmpty(); // version 1 had none
    }

    @Test
    void theUsualValuesBeginTheJobThatIsBegunWithoutAny() {
        assertThat(file().read().begin(DAY, HardwareList.USUAL)).isEqualTo(Job.begin(DAY));
    }

    @Test
    void aJobTakesTheHardwareOfTheJobBeforeWhereTheMakerHasNoList() {
        HardwareList few = new HardwareList(HardwareList.USUAL.fasteners().subList(0, 9), HardwareList.USUAL.rings());
        assertThat(MakerDefaults.USUAL.begin(DAY, few).spec().hardware()).isEqualTo(few);
        assertThat(MakerDefaults.USUAL
                        .withHardware(Optional.of(HardwareList.USUAL))
                        .begin(DAY, few)
                        .spec()
                        .hardware())
                .isEqualTo(HardwareList.USUAL);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "null",
                "{}",
                "[1",
                "{\"format\":\"weltwright prices\",\"version\":1}",
                "{\"format\":\"weltwright defaults\",\"version\":1,\"units\":\"mm\",\"leather\":99,\"pitch\":4,"
                        + "\"stitch_margin\":3,\"belt_width\":38,\"hardware\":null,\"typed\":{}}",
                "{\"format\":\"weltwright defaults\",\"version\":2,\"units\":\"mm\",\"leather\":3,\"pitch\":4,"
                        + "\"stitch_margin\":3,\"belt_width\":38,\"hardware\":null,\"typed\":{}}"
            })
    void aDamagedFileIsToldAndNeverReplaced(String content) throws IOException {
        Files.createDirectories(folder.resolve("settings"));
        Files.writeString(file().file(), content);
        assertThatThrownBy(() -> file().read()).isInstanceOf(UserFacingException.class);
        assertThatThrownBy(() -> file().write(MakerDefaults.USUAL)).isInstanceOf(UserFacingException.class);
        assertThat(Files.readString(file().file())).isEqualTo(content);
    }
}
