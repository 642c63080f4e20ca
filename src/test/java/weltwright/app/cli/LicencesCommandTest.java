package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LicencesCommandTest {
    @Test
    void listsLibrariesAndFonts() {
        assertThat(CommandLineRun.of("licences").succeeds().out()).contains("JavaCPP", "OpenBLAS", "Noto Sans fonts");
    }

    @Test
    void printsTheTextOfWhatIsNamedAndOfNothingElse() {
        assertThat(CommandLineRun.of("licences", "noto emoji").succeeds().out())
                .contains("SIL OPEN FONT LICENSE Version 1.1")
                .doesNotContain("GNU");
    }

    @Test
    void refusesANameThatIsNotListed() {
        CommandLineRun.of("licences", "no such thing")
                .fails(CommandLineApplication.USER_ERROR, "no such thing", "licences");
    }
}
