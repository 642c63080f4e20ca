package weltwright;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The order of the packages, from photo to paper, as DEVELOPERS.md draws it, and who may touch which library. */
class ArchitectureTest {
    /** Each may use those before it, and none after it. */
    private static final List<String> STEPS = List.of(
            "trouble",
            "io",
            "measure",
            "geometry",
            "photo",
            "ground",
            "knife",
            "trace",
            "fit",
            "sheath",
            "bench",
            "wording",
            "paper",
            "cutter",
            "job",
            "command",
            "window");

    private static final JavaClasses PROGRAM = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("weltwright");

    static List<String> steps() {
        return STEPS;
    }

    @ParameterizedTest
    @MethodSource("steps")
    void dependsOnlyOnStepsBeforeIt(String step) {
        String[] later = STEPS.subList(STEPS.indexOf(step) + 1, STEPS.size()).stream()
                .map(name -> "weltwright." + name + "..")
                .toArray(String[]::new);
        noClasses()
                .that()
                .resideInAPackage("weltwright." + step + "..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(later)
                .orShould()
                .dependOnClassesThat()
                .haveFullyQualifiedName("weltwright.Weltwright")
                .allowEmptyShould(later.length == 0)
                .check(PROGRAM);
    }

    @Test
    void everyPackageIsAStepOfTheWay() {
        Assertions.assertThat(PROGRAM.stream()
                        .map(JavaClass::getPackageName)
                        .filter(name -> !name.equals("weltwright"))
                        .distinct())
                .containsExactlyInAnyOrderElementsOf(
                        STEPS.stream().map(step -> "weltwright." + step).toList());
    }

    @Test
    void packagesGoRoundInNoCircle() {
        slices().matching("weltwright.(*)..").should().beFreeOfCycles().check(PROGRAM);
    }

    @Test
    void commandLineAndWindowKnowNothingOfEachOther() {
        noClasses()
                .that()
                .resideInAPackage("weltwright.window..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("weltwright.command..")
                .check(PROGRAM);
    }

    @Test
    void onlyGroundAndTraceSeeOpenCv() {
        onlyIn(List.of("weltwright.ground..", "weltwright.trace.."), "org.opencv..", "org.bytedeco..");
    }

    @Test
    void onlyPaperSeesPdfBox() {
        onlyIn(List.of("weltwright.paper.."), "org.apache.pdfbox..", "org.apache.fontbox..");
    }

    @Test
    void onlyTheWindowSeesSwing() {
        onlyIn(
                List.of("weltwright.window.."),
                "javax.swing..",
                "java.awt.event..",
                "java.awt.dnd..",
                "com.formdev.flatlaf..",
                "net.miginfocom..");
    }

    @Test
    void onlyTheCommandLineSeesPicocli() {
        onlyIn(List.of("weltwright.command.."), "picocli..");
    }

    @Test
    void onlyThePhotoSeesExif() {
        onlyIn(List.of("weltwright.photo.."), "com.drew..");
    }

    private static void onlyIn(List<String> packages, String... libraries) {
        noClasses()
                .that()
                .resideOutsideOfPackages(packages.toArray(String[]::new))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(libraries)
                .check(PROGRAM);
    }
}
