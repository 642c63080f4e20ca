package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class JobNamesTest {
    private static List<String> names(String... files) {
        return List.copyOf(
                JobNames.of(List.of(files).stream().map(Path::of).toList()).values());
    }

    @Test
    void aFilesNameIsEnoughWhereItIsTheOnlyOne() {
        assertThat(names("/jobs/north/anouk.wwj", "/jobs/north/bo.wwj")).containsExactly("anouk", "bo");
    }

    @Test
    void filesOfOneNameAreToldApartByTheirFolders() {
        assertThat(names("/north/anouk.wwj", "/south/anouk.wwj", "/south/bo.wwj"))
                .containsExactly("north/anouk", "south/anouk", "bo");
        assertThat(names("/north/knives/anouk.wwj", "/south/knives/anouk.wwj"))
                .containsExactly("north/knives/anouk", "south/knives/anouk");
        assertThat(names("/anouk.wwj", "/north/anouk.wwj")).containsExactly("anouk", "north/anouk");
    }

    @Test
    void oneFileHasOneName() {
        assertThat(names("/north/anouk.wwj", "/north/../north/anouk.wwj")).containsExactly("anouk");
    }

    @Test
    void namesOfFilesMadeFromThemDiffer() {
        assertThat(names("/a/anouk.wwj", "/a/anouk.json", "/a/Anouk.wwj")).doesNotHaveDuplicates();
        assertThat(names("/a/anouk.wwj", "/b/anouk.wwj", "/c/a-anouk.wwj").stream()
                        .map(JobNames::inFileName))
                .doesNotHaveDuplicates();
    }
}
