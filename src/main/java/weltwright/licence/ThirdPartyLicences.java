package weltwright.licence;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.JarURLConnection;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Lists what is shipped besides the program's own code, with licences.
 *
 * <p>The libraries come from {@value #LIBRARIES}, which the build makes from their POMs; what lies inside a jar without
 * being an artifact, and fonts, from {@value #PARTS}. The text of a library's licence is taken from its own jar; where
 * the jar carries none, it is the standard text with the notice in {@value #NOTICES}.
 */
public final class ThirdPartyLicences {
    static final String LIBRARIES = "/THIRD-PARTY.txt";
    static final String PARTS = "parts.tsv";
    static final String NOTICES = "copyright.tsv";

    /** Where jars carry the licences of themselves and of the libraries that were linked into them. */
    private static final Pattern LICENCE_FILE =
            Pattern.compile("META-INF/[^/]*(LICENSE|NOTICE)[^/]*|.+/share/licenses/.+[^/]");

    /** How the conditions of the Apache, the MIT and the BSD licence begin. */
    private static final Pattern CONDITIONS = Pattern.compile("TERMS AND CONDITIONS FOR USE, REPRODUCTION"
            + "|Permission is hereby granted, free of charge|Redistribution and use in source and binary forms");

    private static final String SEPARATOR = "\n\n" + "-".repeat(72) + "\n\n";

    private final Map<String, String> textsInJars = new TreeMap<>();
    private final Map<String, String> notices;

    private ThirdPartyLicences() throws IOException {
        for (URL manifest :
                Collections.list(ThirdPartyLicences.class.getClassLoader().getResources(JarFile.MANIFEST_NAME))) {
            if (manifest.openConnection() instanceof JarURLConnection connection) {
                connection.setUseCaches(false);
                try (JarFile jar = connection.getJarFile()) {
                    textsInJars.merge(fileName(connection.getJarFileURL()), texts(jar), (one, same) -> one);
                }
            }
        }
        notices = rows(NOTICES).stream().collect(Collectors.toMap(row -> row[0], row -> row[1]));
    }

    /**
     * Returns all components by name.
     *
     * @throws UncheckedIOException if a jar cannot be read
     * @throws NullPointerException if the text of a licence is missing in this package
     */
    public static List<LicensedComponent> all() {
        try {
            return new ThirdPartyLicences().components();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private List<LicensedComponent> components() throws IOException {
        List<LicensedComponent> components = new ArrayList<>();
        Map<String, String> versions = new TreeMap<>();
        for (String[] row : rows(LIBRARIES)) {
            versions.put(row[0], row[1]);
            components.add(new LicensedComponent(
                    row[2], row[0], row[1], row[3].replace("|", " or "), libraryText(row[0], row[1], row[3])));
        }
        for (String[] row : rows(PARTS)) {
            components.add(new LicensedComponent(
                    row[0], row[2], versions.getOrDefault(row[2], ""), row[1], row[4] + "\n\n" + standardText(row[1])));
        }
        components.sort(Comparator.comparing(LicensedComponent::name, String.CASE_INSENSITIVE_ORDER));
        return List.copyOf(components);
    }

    /** The texts in the library's own jars, or else that of the first of its licences that is in this package. */
    private String libraryText(String artifactId, String version, String licences) throws IOException {
        String jar = artifactId + "-" + version;
        String own = textsInJars.entrySet().stream()
                .filter(entry ->
                        entry.getKey().equals(jar + ".jar") || entry.getKey().startsWith(jar + "-"))
                .map(Map.Entry::getValue)
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(SEPARATOR));
        String notice = notices.containsKey(artifactId) ? notices.get(artifactId) + "\n\n" : "";
        String standard = jarCarriesItsOwnLicence(own) ? "" : notice + standardText(licences.split("\\|", -1)[0]);
        return Stream.of(standard, own).filter(text -> !text.isEmpty()).collect(Collectors.joining(SEPARATOR));
    }

    /**
     * Whether these texts have the library's own licence in full: some jars carry only those of libraries that were
     * linked into them, or a sentence that refers to a licence elsewhere.
     */
    private static boolean jarCarriesItsOwnLicence(String texts) {
        return texts.contains("META-INF/LICENSE") && CONDITIONS.matcher(texts).find();
    }

    private static String standardText(String licence) throws IOException {
        return resource(licence + ".txt");
    }

    private static String texts(JarFile jar) throws IOException {
        List<String> texts = new ArrayList<>();
        for (JarEntry entry : Collections.list(jar.entries())) {
            if (LICENCE_FILE.matcher(entry.getName()).matches()) {
                try (InputStream in = jar.getInputStream(entry)) {
                    texts.add(entry.getName() + "\n\n" + new String(in.readAllBytes(), StandardCharsets.UTF_8).strip());
                }
            }
        }
        return String.join(SEPARATOR, texts);
    }

    private static String fileName(URL jar) {
        return jar.getPath().substring(jar.getPath().lastIndexOf('/') + 1);
    }

    private static List<String[]> rows(String resource) throws IOException {
        return resource(resource)
                .lines()
                .filter(line -> !line.isBlank())
                .map(line -> line.split("\t", -1))
                .toList();
    }

    private static String resource(String name) throws IOException {
        try (InputStream in = ThirdPartyLicences.class.getResourceAsStream(name)) {
            return new String(
                    Objects.requireNonNull(in, () -> "no resource " + name).readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
