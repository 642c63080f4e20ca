package weltwright.output.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.text.BreakIterator;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import weltwright.message.LineBreaks;

/**
 * The typeface of all printed text, embedded in the document: Liberation Sans, which is part of PDFBox. It has Latin,
 * Greek, Cyrillic and Hebrew letters; text in other scripts is drawn as outlines ({@link FallbackFonts}). A box
 * replaces a character that no font has.
 */
public final class PdfTypeface {
    private static final String FILE = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";
    private static final String BOX = "□";

    /** Height of a capital over the size of the letters. From the font's OS/2 table: 1409 of 2048 units. */
    public static final double CAPITAL = 1409.0 / 2048;

    /** How far a letter such as g reaches below the base line, over the size of the letters; the same table: 434. */
    public static final double DESCENT = 434.0 / 2048;

    /** From one line to the next over the size of the letters. */
    public static final double LINE = 1.25;

    private final PDFont font;
    private final TextShaper setter = new TextShaper(this::has, this::widthEm);
    private final Map<Integer, Boolean> known = new HashMap<>();

    private PdfTypeface(PDFont font) {
        this.font = font;
    }

    public static PdfTypeface in(PDDocument document) throws IOException {
        try (InputStream file = PDDocument.class.getResourceAsStream(FILE)) {
            TrueTypeFont letters = new TTFParser().parse(new RandomAccessReadBuffer(file));
            // Widths are those of single letters; PDFBox compiles regular expressions anew to join each line's letters.
            letters.setEnableGsub(false);
            return new PdfTypeface(PDType0Font.load(document, letters, true));
        }
    }

    PDFont font() {
        return font;
    }

    /** The text without what cannot be printed: controls become spaces, and a box stands for what no font has. */
    String printable(String text) {
        StringBuilder clean = new StringBuilder();
        for (String cluster : TextShaper.clusters(composed(text))) {
            clean.append(setter.draws(cluster) ? cluster : BOX);
        }
        return clean.toString();
    }

    /** What of a text no font has, each once, as a reader sees characters. */
    public Set<String> missing(String text) {
        Set<String> missing = new LinkedHashSet<>();
        for (String cluster : TextShaper.clusters(composed(text))) {
            if (!setter.draws(cluster)) {
                missing.add(cluster);
            }
        }
        return missing;
    }

    /** Letters and their accents in one character where there is one; no controls, no halves of characters. */
    private static String composed(String text) {
        StringBuilder clean = new StringBuilder();
        text.codePoints().forEach(c -> {
            switch (Character.getType(c)) {
                case Character.CONTROL, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR -> clean.append(' ');
                case Character.SURROGATE -> clean.append('\uFFFD');
                default -> clean.appendCodePoint(c);
            }
        });
        return Normalizer.normalize(clean, Normalizer.Form.NFC);
    }

    /** A printable line as it is drawn. */
    ShapedText set(String printable) {
        return setter.line(printable);
    }

    /** Width of a printable line of letters of this size. */
    public double widthMm(String printable, double sizeMm) {
        return set(printable).widthEm() * sizeMm;
    }

    /**
     * The text broken at spaces ({@link LineBreaks}) into lines no wider than asked; a word that is wider alone is
     * broken too.
     */
    public List<String> wrap(String text, double widthMm, double sizeMm) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : LineBreaks.parts(printable(text).trim())) {
            String between = line.isEmpty() ? "" : " ";
            for (String part : unbreakable(word, widthMm, sizeMm)) {
                String longer = line + between + part;
                if (widthMm(longer, sizeMm) <= widthMm || longer.isEmpty()) {
                    line = longer;
                } else {
                    if (!line.isEmpty()) {
                        lines.add(line);
                    }
                    line = part;
                }
                between = "";
            }
        }
        if (!line.isEmpty()) {
            lines.add(line);
        }
        return lines;
    }

    /**
     * The parts that a word may be broken into: itself where it fits; in scripts without spaces what lies between
     * places where a line may break (Unicode Standard Annex 14); else as many characters as fit.
     */
    private List<String> unbreakable(String word, double widthMm, double sizeMm) {
        boolean spaceless = word.codePoints().anyMatch(c -> c >= 0x0E00);
        // A character is at most some 2 em wide: a word this short needs no measuring.
        if (!spaceless && (word.length() * 2 * sizeMm <= widthMm || widthMm(word, sizeMm) <= widthMm)) {
            return List.of(word);
        }
        List<String> parts = new ArrayList<>();
        BreakIterator breaks = BreakIterator.getLineInstance(Locale.ROOT);
        breaks.setText(word);
        int from = breaks.first();
        for (int to = breaks.next(); to != BreakIterator.DONE; from = to, to = breaks.next()) {
            String rest = word.substring(from, to);
            while (!rest.isEmpty()) {
                String fits = fitting(rest, widthMm, sizeMm);
                // A single character wider than the column still has to go somewhere.
                String part = fits.isEmpty() ? TextShaper.clusters(rest).get(0) : fits;
                parts.add(part);
                rest = rest.substring(part.length());
            }
        }
        return parts;
    }

    /** As much of a line as is no wider than asked, with an ellipsis where something was left out. */
    public String cut(String text, double widthMm, double sizeMm) {
        String line = printable(text);
        String whole = fitting(line, widthMm, sizeMm);
        return whole.length() == line.length() ? line : fitting(line, widthMm - widthMm("…", sizeMm), sizeMm) + "…";
    }

    /** The longest start of a printable line that is no wider than asked, in whole characters as a reader sees them. */
    private String fitting(String printable, double widthMm, double sizeMm) {
        List<String> clusters = new ArrayList<>();
        double width = 0;
        StringBuilder start = new StringBuilder();
        Matcher next = TextShaper.CLUSTER.matcher(printable);
        // Far enough by the sum of the characters; joined ones may then be narrower or wider.
        while (width <= 1.5 * widthMm + sizeMm && next.find()) {
            clusters.add(next.group());
            width += widthMm(next.group(), sizeMm);
        }
        clusters.forEach(start::append);
        int n = clusters.size();
        while (n > 0 && widthMm(start.toString(), sizeMm) > widthMm) {
            n--;
            start.setLength(start.length() - clusters.get(n).length());
        }
        return start.toString();
    }

    private double widthEm(String text) {
        try {
            return font.getStringWidth(text) / 1000;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private boolean has(int c) {
        return known.computeIfAbsent(c, this::isEncodable);
    }

    private boolean isEncodable(int c) {
        try {
            font.encode(Character.toString(c));
            return true;
        } catch (IllegalArgumentException e) {
            return false;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
