package weltwright.output.pdf;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.GraphicsEnvironment;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.io.IOException;
import java.io.InputStream;
import java.lang.Character.UnicodeScript;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Chooses the font for characters that {@link PdfTypeface}'s own typeface lacks: of the fonts in this project the first
 * that has them, else of the fonts installed on this computer. A font is loaded when it is first needed.
 *
 * <p>Of the fonts in this project all scripts with more than some ten million readers are covered; where they came from
 * and under which licences is in {@code fonts/README.md} beside them.
 */
final class FallbackFonts {
    /** Outlines are taken at this size, so that one unit is a thousandth of an em. */
    static final float UNITS_PER_EM = 1000;

    /** Neither hinted nor rounded to pixels. */
    static final FontRenderContext UNHINTED = new FontRenderContext(null, true, true);

    private static final Map<Bundled, Optional<Font>> LOADED = new EnumMap<>(Bundled.class);
    private static final Map<String, Optional<Font>> CHOSEN = new HashMap<>();
    private static @Nullable List<Font> installed;

    private FallbackFonts() {}

    /** A font in this project, and the scripts that it is there for. */
    private enum Bundled {
        /** For its own letters with accents that no single character has. */
        LIBERATION(
                "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf",
                UnicodeScript.LATIN,
                UnicodeScript.GREEK,
                UnicodeScript.CYRILLIC,
                UnicodeScript.HEBREW),
        ARABIC("fonts/NotoSansArabic-Regular.ttf", UnicodeScript.ARABIC),
        HEBREW("fonts/NotoSansHebrew-Regular.ttf", UnicodeScript.HEBREW),
        DEVANAGARI("fonts/NotoSansDevanagari-Regular.ttf", UnicodeScript.DEVANAGARI),
        BENGALI("fonts/NotoSansBengali-Regular.ttf", UnicodeScript.BENGALI),
        GUJARATI("fonts/NotoSansGujarati-Regular.ttf", UnicodeScript.GUJARATI),
        GURMUKHI("fonts/NotoSansGurmukhi-Regular.ttf", UnicodeScript.GURMUKHI),
        KANNADA("fonts/NotoSansKannada-Regular.ttf", UnicodeScript.KANNADA),
        MALAYALAM("fonts/NotoSansMalayalam-Regular.ttf", UnicodeScript.MALAYALAM),
        SINHALA("fonts/NotoSansSinhala-Regular.ttf", UnicodeScript.SINHALA),
        TAMIL("fonts/NotoSansTamil-Regular.ttf", UnicodeScript.TAMIL),
        TELUGU("fonts/NotoSansTelugu-Regular.ttf", UnicodeScript.TELUGU),
        THAI("fonts/NotoSansThai-Regular.ttf", UnicodeScript.THAI),
        LAO("fonts/NotoSansLao-Regular.ttf", UnicodeScript.LAO),
        KHMER("fonts/NotoSansKhmer-Regular.ttf", UnicodeScript.KHMER),
        MYANMAR("fonts/NotoSansMyanmar-Regular.ttf", UnicodeScript.MYANMAR),
        ETHIOPIC("fonts/NotoSansEthiopic-Regular.ttf", UnicodeScript.ETHIOPIC),
        ARMENIAN("fonts/NotoSansArmenian-Regular.ttf", UnicodeScript.ARMENIAN),
        GEORGIAN("fonts/NotoSansGeorgian-Regular.ttf", UnicodeScript.GEORGIAN),
        KOREAN("fonts/GothicA1-Regular.ttf", UnicodeScript.HANGUL),
        CHINESE_AND_JAPANESE(
                "fonts/DroidSansFallbackFull.ttf",
                UnicodeScript.HAN,
                UnicodeScript.HIRAGANA,
                UnicodeScript.KATAKANA,
                UnicodeScript.BOPOMOFO),
        EMOJI("fonts/NotoEmoji-Regular.ttf", UnicodeScript.COMMON);

        private final String resource;
        private final Set<UnicodeScript> scripts;

        Bundled(String resource, UnicodeScript... scripts) {
            this.resource = resource;
            this.scripts = Set.of(scripts);
        }

        private Optional<Font> load() {
            try (InputStream file = FallbackFonts.class.getResourceAsStream(resource)) {
                return Optional.of(Font.createFont(Font.TRUETYPE_FONT, file).deriveFont(UNITS_PER_EM));
            } catch (IOException | FontFormatException | RuntimeException | Error e) {
                // A Java without a working font system, as some servers have: what needs the font is told as missing.
                return Optional.empty();
            }
        }
    }

    /**
     * The font for a character that a reader sees as one.
     *
     * @param cluster an extended grapheme cluster (Unicode Standard Annex 29)
     * @return at {@link #UNITS_PER_EM}; empty where no font has all of it
     */
    static synchronized Optional<Font> covering(String cluster) {
        Optional<Font> chosen = CHOSEN.get(cluster);
        if (chosen == null) {
            chosen = choose(cluster);
            CHOSEN.put(cluster, chosen);
        }
        return chosen;
    }

    private static Optional<Font> choose(String cluster) {
        UnicodeScript script = UnicodeScript.of(cluster.codePointAt(0));
        List<Bundled> likeliestFirst = Arrays.stream(Bundled.values())
                .sorted(Comparator.comparing(font -> !font.scripts.contains(script)))
                .toList();
        for (Bundled bundled : likeliestFirst) {
            Optional<Font> font = LOADED.get(bundled);
            if (font == null) {
                font = bundled.load();
                LOADED.put(bundled, font);
            }
            if (font.isPresent() && draws(font.get(), cluster)) {
                return font;
            }
        }
        return installed().stream().filter(font -> draws(font, cluster)).findFirst();
    }

    /** In the order of their names, so that two runs on one computer choose alike. */
    private static List<Font> installed() {
        if (installed == null) {
            List<Font> fonts = new ArrayList<>();
            try {
                for (Font font :
                        GraphicsEnvironment.getLocalGraphicsEnvironment().getAllFonts()) {
                    fonts.add(font.deriveFont(UNITS_PER_EM));
                }
            } catch (RuntimeException | Error e) {
                // No working font system; see above.
            }
            fonts.sort(Comparator.comparing(Font::getFontName));
            installed = List.copyOf(fonts);
        }
        return installed;
    }

    /** Whether the font has outlines for all of the cluster; pictures of dots, as coloured emoji are, do not print. */
    private static boolean draws(Font font, String cluster) {
        boolean has = cluster.codePoints()
                .allMatch(
                        c -> font.canDisplay(c) || Character.getType(c) == Character.FORMAT || isVariationSelector(c));
        if (!has) {
            return false;
        }
        char[] chars = cluster.toCharArray();
        GlyphVector glyphs = font.layoutGlyphVector(UNHINTED, chars, 0, chars.length, Font.LAYOUT_LEFT_TO_RIGHT);
        return !glyphs.getOutline().getBounds2D().isEmpty();
    }

    /** Asks for a style of the character before it, such as coloured (Unicode, chapter 23.4). */
    private static boolean isVariationSelector(int c) {
        return (c >= 0xFE00 && c <= 0xFE0F) || (c >= 0xE0100 && c <= 0xE01EF);
    }
}
