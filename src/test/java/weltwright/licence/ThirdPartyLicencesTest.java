package weltwright.licence;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.SAXException;

/** Everything that is shipped is listed with its licence and its text, and nothing else is. */
class ThirdPartyLicencesTest {
    private static final Path TEXTS = Path.of("src", "main", "resources", "weltwright", "licence");
    private static final Path FONTS = Path.of("src", "main", "resources", "weltwright", "output", "pdf", "fonts");

    /** The first words of each licence's conditions, by SPDX identifier. */
    private static final List<String> CONDITIONS = List.of(
            "Apache License",
            "Permission is hereby granted, free of charge", // MIT
            "Redistribution and use in source and binary forms", // BSD
            "SIL OPEN FONT LICENSE",
            "GNU GENERAL PUBLIC LICENSE",
            "GNU LESSER GENERAL PUBLIC LICENSE");

    private static final List<LicensedComponent> COMPONENTS = ThirdPartyLicences.all();

    @Test
    void everyLibraryThatThePomShipsIsListed() throws Exception {
        assertThat(COMPONENTS).extracting(LicensedComponent::artifactId).containsAll(shippedByThePom());
    }

    @Test
    void everyListedLibraryIsOnTheClassPath() {
        assertThat(COMPONENTS)
                .allSatisfy(component -> assertThat(component.artifactId().equals("weltwright")
                                || !jarsOf(component).isEmpty())
                        .as(component.name())
                        .isTrue());
    }

    @Test
    void everyComponentHasTheConditionsOfALicence() {
        assertThat(COMPONENTS)
                .allSatisfy(
                        component -> assertThat(CONDITIONS).as(component.name()).anyMatch(component.text()::contains));
    }

    /** BSD and MIT ask that the copyright notice be kept (clauses 1 and 2 of the BSD licence). */
    @Test
    void permissiveLicencesNameTheHolder() {
        assertThat(COMPONENTS)
                .filteredOn(component -> component.licence().matches(".*(BSD|MIT).*"))
                .isNotEmpty()
                .allSatisfy(component ->
                        assertThat(component.text()).as(component.name()).containsPattern("Copyright \\(?[cC©]?\\)?"));
    }

    @Test
    void everyFontIsAPart() throws IOException {
        List<String> beginnings = rows(ThirdPartyLicences.PARTS).stream()
                .filter(row -> row[2].equals("weltwright"))
                .map(row -> row[3])
                .toList();
        List<String> fonts = names(FONTS, ".ttf");
        assertThat(fonts).allMatch(font -> beginnings.stream().anyMatch(font::startsWith));
        assertThat(beginnings).allMatch(start -> fonts.stream().anyMatch(font -> font.startsWith(start)));
    }

    /** The parts are those of the natives for Linux on x86-64; those for other systems name their files otherwise. */
    @Test
    void everyPartOfTheNativesIsInTheirJar() throws IOException {
        for (String[] row : rows(ThirdPartyLicences.PARTS)) {
            for (Path jar : classPath()) {
                if (jar.getFileName().toString().matches(Pattern.quote(row[2]) + "-[0-9.-]+-linux-x86_64\\.jar")) {
                    assertThat(entries(jar)).as(row[0]).anyMatch(entry -> entry.contains("/" + row[3]));
                }
            }
        }
    }

    @Test
    void everyNoticeAndEveryTextIsUsed() throws IOException {
        assertThat(rows(ThirdPartyLicences.NOTICES))
                .allSatisfy(row -> assertThat(COMPONENTS)
                        .filteredOn(component -> component.artifactId().equals(row[0]))
                        .isNotEmpty()
                        .allMatch(component -> component.text().startsWith(row[1])));
        assertThat(names(TEXTS, ".txt")).allSatisfy(file -> {
            String text = Files.readString(TEXTS.resolve(file));
            assertThat(COMPONENTS)
                    .anyMatch(component -> component.licence().contains(file.replace(".txt", ""))
                            && component.text().contains(text));
        });
    }

    @Test
    void librariesLinkedIntoTheNativesBringTheirTexts() {
        LicensedComponent opencv = COMPONENTS.stream()
                .filter(component -> component.name().equals("JavaCPP Presets for OpenCV"))
                .findFirst()
                .orElseThrow();
        // JPEG and PNG are decoded by these two, whose licences ask for it
        assertThat(opencv.text()).contains("Independent JPEG Group", "PNG Reference Library License");
    }

    private static List<String> shippedByThePom() throws IOException, ParserConfigurationException, SAXException {
        Element project = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new File("pom.xml"))
                .getDocumentElement();
        Element dependencies = children(project, "dependencies").get(0);
        return children(dependencies, "dependency").stream()
                .filter(dependency -> children(dependency, "scope").stream()
                        .noneMatch(scope -> List.of("test", "provided").contains(scope.getTextContent())))
                .map(dependency -> children(dependency, "artifactId").get(0).getTextContent())
                .toList();
    }

    private static List<Element> children(Element parent, String name) {
        return Stream.iterate(parent.getFirstChild(), node -> node != null, Node::getNextSibling)
                .filter(node -> node.getNodeName().equals(name))
                .map(Element.class::cast)
                .toList();
    }

    private static List<Path> jarsOf(LicensedComponent component) {
        String start = component.artifactId() + "-" + component.version();
        return classPath().stream()
                .filter(jar -> jar.getFileName().toString().startsWith(start))
                .toList();
    }

    private static List<Path> classPath() {
        return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .map(Path::of)
                .filter(path -> path.toString().endsWith(".jar"))
                .toList();
    }

    private static List<String> entries(Path jar) throws IOException {
        try (JarFile file = new JarFile(jar.toFile())) {
            return file.stream().map(JarEntry::getName).toList();
        }
    }

    private static List<String[]> rows(String file) throws IOException {
        return Files.readAllLines(TEXTS.resolve(file)).stream()
                .map(line -> line.split("\t", -1))
                .toList();
    }

    private static List<String> names(Path folder, String ending) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(ending))
                    .toList();
        }
    }
}
