package weltwright.guide;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import weltwright.message.Language;

/** A page of the guide in the current language, in the order in which they are read. */
public enum GuidePage {
    WAY,
    PHOTO,
    OUTLINE,
    SHEATH,
    LEATHER,
    PRINTING,
    MACHINE,
    BENCH,
    KEYS,
    COMMANDS,
    WORDS,
    TROUBLES,
    PRIVACY,
    CAUTIONS;

    private static final List<Extension> EXTENSIONS = List.of(TablesExtension.create());

    /** Returns its name on the command line and that of its file without extension. */
    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Returns the page of a name, or of its file's name; empty where there is none. */
    public static Optional<GuidePage> of(String name) {
        String id = name.toLowerCase(Locale.ROOT).replaceFirst("\\.md$", "");
        return Arrays.stream(values()).filter(page -> page.id().equals(id)).findFirst();
    }

    /** Returns its first heading. */
    public String title() {
        return markdown().lines().findFirst().orElseThrow().replaceFirst("^#\\s*", "");
    }

    /** Returns the page as HTML without head; links to other pages have their file names. */
    public String html() {
        return HtmlRenderer.builder().extensions(EXTENSIONS).build().render(document());
    }

    /**
     * Returns the page as plain text.
     *
     * @param width most characters on a line
     */
    public String text(int width) {
        return new GuideText(width).render(document());
    }

    private Node document() {
        return Parser.builder().extensions(EXTENSIONS).build().parse(markdown());
    }

    private String markdown() {
        String inLanguage =
                Language.current() == Language.ENGLISH ? "" : Language.current().tag() + "/";
        String resource = inLanguage + id() + ".md";
        try (InputStream in = Objects.requireNonNull(GuidePage.class.getResourceAsStream(resource), resource)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // the page is a part of the program
        }
    }
}
