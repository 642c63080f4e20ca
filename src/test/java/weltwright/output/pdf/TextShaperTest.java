package weltwright.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Font;
import java.awt.Shape;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.io.IOException;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines of text in any script: which font, which order, which shapes. */
class TextShaperTest {
    private static PDDocument document;
    private static PdfTypeface typeface;

    @BeforeAll
    static void open() throws IOException {
        document = new PDDocument();
        typeface = PdfTypeface.in(document);
    }

    @AfterAll
    static void close() throws IOException {
        document.close();
    }

    /** The examples of Unicode Standard Annex 9, "Reordering Resolved Levels", with Hebrew letters for its capitals. */
    @ParameterizedTest
    @CsvSource({"car means אבג., car means גבא.", "he said “אבג 123 דהו”., he said “והד 123 גבא”.", "(אבג), (גבא)"})
    void wordsFromTheRightStandInTheirOrder(String written, String seen) {
        ShapedText line = typeface.set(typeface.printable(written));
        assertThat(line.parts()).allMatch(part -> part instanceof ShapedText.Letters);
        assertThat(line.parts().stream()
                        .map(part -> ((ShapedText.Letters) part).text())
                        .collect(Collectors.joining()))
                .isEqualTo(seen);
    }

    /**
     * Arabic letters take the form that their place in the word asks for. The forms are characters of their own in
     * Unicode's block "Arabic Presentation Forms-B": seen initial, kaf medial, yeh medial, noon final; set from the
     * left they are noon, yeh, kaf, seen.
     */
    @Test
    void arabicLettersJoin() {
        ShapedText line = typeface.set("سكين");
        Font font = FallbackFonts.covering("س").orElseThrow();
        String fromTheLeft = "\uFEE6\uFEF4\uFEDC\uFEB3";
        assertThat(font.canDisplayUpTo(fromTheLeft)).isEqualTo(-1);
        GlyphVector forms = font.createGlyphVector(FallbackFonts.UNHINTED, fromTheLeft);
        Area difference = new Area(((ShapedText.Outlines) line.parts().get(0)).shape());
        difference.exclusiveOr(new Area(forms.getOutline()));
        assertThat(difference.getBounds2D().getWidth()
                        * difference.getBounds2D().getHeight())
                .isLessThan(1);
        assertThat(line.widthEm())
                .isEqualTo(forms.getGlyphPosition(forms.getNumGlyphs()).getX() / 1000, within(1e-6));
    }

    /** In Devanagari, क + ् + ष are one letter, क्ष, and ि stands before the letter that it is spoken after. */
    @Test
    void devanagariLettersJoin() {
        assertThat(typeface.set("क्ष").widthEm())
                .isLessThan(typeface.set("क").widthEm() + typeface.set("ष").widthEm() - 0.1);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "李小龙",
                "ナイフ",
                "칼",
                "سكين",
                "چاقو",
                "سكين (كبير) 12",
                "नमस्ते",
                "มีด",
                "ዕውቀት",
                "დანა",
                "դանակ",
                "কাঁচি",
                "🔪",
                "👨‍👩‍👧",
                "❤️",
                "e\u030B\u0323",
                "שָׁלוֹם"
            })
    void hasEveryScriptThatManyRead(String text) {
        assertThat(typeface.missing(text)).isEmpty();
        ShapedText line = typeface.set(typeface.printable(text));
        assertThat(line.widthEm()).isGreaterThan(0.2);
        double x = 0;
        for (ShapedText.Part part : line.parts()) {
            assertThat(part.xEm()).isGreaterThanOrEqualTo(x);
            x = part.xEm();
            if (part instanceof ShapedText.Outlines outlines) {
                Shape inEm = AffineTransform.getScaleInstance(1e-3, 1e-3).createTransformedShape(outlines.shape());
                assertThat(inEm.getBounds2D().getMaxX() + x).isLessThan(line.widthEm() + 0.3);
            }
        }
    }

    /** Cuneiform has no font here; U+FFFF is no character. */
    @Test
    void aBoxStandsForWhatNoFontHas() {
        assertThat(typeface.missing("a\uD808\uDC00b\uD808\uDC00")).containsExactly("\uD808\uDC00");
        assertThat(typeface.printable("a\uD808\uDC00b\uFFFF")).isEqualTo("a□b□");
        assertThat(typeface.missing("Łukasz \u0007\t\uD83D")).isEmpty();
    }

    /** Without spaces between words, lines break all the same, and nothing is lost. */
    @ParameterizedTest
    @ValueSource(
            strings = {"这把刀是给我的客户的，他要把刀挂在右边的皮带上，皮革用深棕色，线用黑色。", "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx"})
    void longWordsAreBroken(String text) {
        List<String> lines = typeface.wrap(text, 30, 3);
        assertThat(lines).hasSizeGreaterThan(2).allMatch(line -> typeface.widthMm(line, 3) <= 30);
        assertThat(String.join("", lines)).isEqualTo(text);
    }
}
