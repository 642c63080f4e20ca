package weltwright;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.net.Socket;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import weltwright.image.opencv.OpenCvLibraries;
import weltwright.licence.ThirdPartyLicences;

/**
 * The order of the packages, from photo to paper, as DEVELOPERS.md lists them, who may use which library, and which
 * methods nobody may use.
 */
class ArchitectureTest {
    /** Each package, its sub-packages not included, may use those before it and none after it. */
    private static final List<String> PACKAGES = List.of(
            "error",
            "message",
            "io",
            "units",
            "geometry",
            "geometry.fit",
            "geometry.curve",
            "image.format",
            "image.metadata",
            "image.opencv",
            "image.conversion",
            "image.parallel",
            "image",
            "camera",
            "camera.lens",
            "camera.adjustment",
            "camera.rectification",
            "ground",
            "ground.rectangle",
            "ground.paper",
            "ground.ruled",
            "ground.sheet",
            "knife",
            "trace.appearance",
            "trace.edge",
            "trace.outline",
            "trace.report",
            "trace.visibility",
            "trace.segment",
            "trace.ground",
            "trace.capture",
            "trace.quality",
            "trace",
            "trace.thickness",
            "hide",
            "fit",
            "sheath.hardware",
            "sheath.spec",
            "sheath.pattern",
            "sheath.planform",
            "sheath.stitch",
            "sheath.attachment",
            "sheath",
            "assembly",
            "layout.collision",
            "layout.search",
            "layout.stock",
            "layout",
            "layout.cost",
            "wording",
            "output",
            "output.cutter",
            "output.pdf",
            "output.card",
            "output.print",
            "output.layout",
            "job",
            "licence",
            "guide",
            "app.cli",
            "app.gui.model",
            "app.gui.theme",
            "app.gui.drawing",
            "app.gui.widget",
            "app.gui.finding",
            "app.gui.home",
            "app.gui.upload",
            "app.gui.form",
            "app.gui.help",
            "app.gui.order",
            "app.gui.assembled",
            "app.gui.knife",
            "app.gui.paper",
            "app.gui.pattern",
            "app.gui.bench",
            "app.gui.photo",
            "app.gui.leather",
            "app.gui.outline",
            "app.gui.sheath",
            "app.gui.preferences",
            "app.gui.shell");

    private static final Path SOURCES = Path.of("src", "main", "java", "weltwright");

    /** Methods that use the default locale, as their Javadoc says. */
    private static final Set<String> OF_THE_DEFAULT_LOCALE = Set.of(
            "java.lang.String.format(java.lang.String, [Ljava.lang.Object;)",
            "java.lang.String.formatted([Ljava.lang.Object;)",
            "java.lang.String.toLowerCase()",
            "java.lang.String.toUpperCase()",
            "java.io.PrintStream.printf(java.lang.String, [Ljava.lang.Object;)",
            "java.io.PrintStream.format(java.lang.String, [Ljava.lang.Object;)",
            "java.io.PrintWriter.printf(java.lang.String, [Ljava.lang.Object;)",
            "java.io.PrintWriter.format(java.lang.String, [Ljava.lang.Object;)",
            "java.io.Console.printf(java.lang.String, [Ljava.lang.Object;)",
            "java.util.Formatter.<init>()",
            "java.util.Formatter.<init>(java.lang.Appendable)",
            "java.util.Scanner.<init>(java.lang.String)",
            "java.text.DecimalFormat.<init>()",
            "java.text.DecimalFormat.<init>(java.lang.String)",
            "java.text.SimpleDateFormat.<init>()",
            "java.text.SimpleDateFormat.<init>(java.lang.String)",
            "java.text.MessageFormat.<init>(java.lang.String)",
            "java.text.MessageFormat.format(java.lang.String, [Ljava.lang.Object;)",
            "java.text.NumberFormat.getInstance()",
            "java.text.NumberFormat.getNumberInstance()",
            "java.text.NumberFormat.getIntegerInstance()",
            "java.text.NumberFormat.getPercentInstance()",
            "java.text.Collator.getInstance()",
            "java.text.BreakIterator.getLineInstance()",
            "java.text.BreakIterator.getCharacterInstance()",
            "java.text.BreakIterator.getWordInstance()",
            "java.time.format.DateTimeFormatter.ofPattern(java.lang.String)",
            "java.time.format.DateTimeFormatterBuilder.toFormatter()");

    private static final JavaClasses PROGRAM = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("weltwright");

    static List<String> packages() {
        return PACKAGES;
    }

    @ParameterizedTest
    @MethodSource("packages")
    void dependsOnlyOnPackagesBeforeIt(String name) {
        String[] later = PACKAGES.subList(PACKAGES.indexOf(name) + 1, PACKAGES.size()).stream()
                .map(after -> "weltwright." + after)
                .toArray(String[]::new);
        noClasses()
                .that()
                .resideInAPackage("weltwright." + name)
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
    void everyPackageHasAPlaceInTheOrder() {
        assertThat(PROGRAM.stream()
                        .map(JavaClass::getPackageName)
                        .filter(name -> !name.equals("weltwright"))
                        .distinct())
                .containsExactlyInAnyOrderElementsOf(
                        PACKAGES.stream().map(name -> "weltwright." + name).toList());
    }

    @ParameterizedTest
    @MethodSource("packages")
    void everyPackageSaysWhatItIs(String name) {
        assertThat(Files.exists(SOURCES.resolve(name.replace('.', '/')).resolve("package-info.java")))
                .isTrue();
    }

    @Test
    void packagesAreFreeOfCycles() {
        slices().matching("weltwright.(**)").should().beFreeOfCycles().check(PROGRAM);
    }

    @Test
    void stepsAreFreeOfCycles() {
        slices().matching("weltwright.(*)..").should().beFreeOfCycles().check(PROGRAM);
    }

    @Test
    void commandLineAndWindowDoNotUseEachOther() {
        noClasses()
                .that()
                .resideInAPackage("weltwright.app.gui..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("weltwright.app.cli..")
                .check(PROGRAM);
    }

    @Test
    void onlyVisionUsesOpenCv() {
        onlyIn(
                List.of(
                        "weltwright.image..",
                        "weltwright.camera..",
                        "weltwright.ground..",
                        "weltwright.trace..",
                        "weltwright.hide"),
                "org.opencv..");
    }

    @Test
    void onlyItsLoaderUsesTheNativesOfOpenCv() {
        onlyIn(List.of("weltwright.image.opencv"), "org.bytedeco..");
    }

    @Test
    void onlyPdfOutputUsesPdfBox() {
        onlyIn(
                List.of(
                        "weltwright.output.pdf",
                        "weltwright.output.card",
                        "weltwright.output.print",
                        "weltwright.output.layout"),
                "org.apache.pdfbox..",
                "org.apache.fontbox..");
    }

    @Test
    void onlyTheWindowUsesSwing() {
        onlyIn(
                List.of("weltwright.app.gui.."),
                "javax.swing..",
                "java.awt.event..",
                "java.awt.dnd..",
                "com.formdev.flatlaf..",
                "net.miginfocom..");
    }

    @Test
    void onlyTheGuideUsesCommonmark() {
        onlyIn(List.of("weltwright.guide"), "org.commonmark..");
    }

    @Test
    void onlyTheUploadServesAndDrawsQrCodes() {
        onlyIn(List.of("weltwright.app.gui.upload"), "com.sun.net.httpserver..", "com.google.zxing..");
    }

    /** Nothing leaves the computer by itself, as the guide says. The two classes left out open jars only. */
    @Test
    void nothingConnectsToAnotherComputer() {
        noClasses()
                .that()
                .doNotBelongToAnyOf(ThirdPartyLicences.class, OpenCvLibraries.class)
                .should()
                .dependOnClassesThat()
                .resideInAPackage("java.net.http..")
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(Socket.class)
                .orShould()
                .callMethod(URL.class, "openConnection")
                .orShould()
                .callMethod(URL.class, "openStream")
                .check(PROGRAM);
    }

    @Test
    void onlyTheCommandLineUsesPicocli() {
        onlyIn(List.of("weltwright.app.cli"), "picocli..");
    }

    @Test
    void onlyImageMetadataUsesMetadataExtractor() {
        onlyIn(List.of("weltwright.image.metadata"), "com.drew..");
    }

    @Test
    void onlyJobFilesAndTheCommandLineUseJackson() {
        onlyIn(List.of("weltwright.job", "weltwright.app.cli"), "com.fasterxml.jackson..");
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

    /** So that no text of the program depends on the computer's language by chance. */
    @Test
    void whateverFormatsOrChangesCaseNamesItsLocale() {
        noClasses()
                .should()
                .accessTargetWhere(new DescribedPredicate<JavaAccess<?>>("the default locale is used") {
                    @Override
                    public boolean test(JavaAccess<?> access) {
                        return OF_THE_DEFAULT_LOCALE.contains(access.getTarget().getFullName());
                    }
                })
                .check(PROGRAM);
    }

    /** Jackson's own lower case for enums is {@code String.toLowerCase()}. */
    @Test
    void jacksonDoesNotChangeTheCaseOfEnums() {
        noClasses()
                .should()
                .accessField("com.fasterxml.jackson.databind.cfg.EnumFeature", "WRITE_ENUMS_TO_LOWERCASE")
                .check(PROGRAM);
    }
}
