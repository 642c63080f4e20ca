package weltwright.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The one typeface of everything that is printed, embedded in the document so that it looks the same on every printer:
 * Liberation Sans, which PDFBox carries with it. It has the Latin, Greek and Cyrillic letters that names are made of.
 */
final class Lettering {
    private static final String FILE = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    /** Height of a capital over the size of the letters. From the font's OS/2 table: 1409 of 2048 units. */
    static final double CAPITAL = 1409.0 / 2048;

    /** How far a letter such as g reaches below the base line, over the size of the letters; the same table: 434. */
    static final double DESCENT = 434.0 / 2048;

    /** From one line to the next over the size of the letters. */
    static final double LINE = 1.25;

    private final PDFont font;

    private Lettering(PDFont font) {
        this.font = font;
    }

    static Lettering in(PDDocument document) throws IOException {
        try (InputStream file = PDDocument.class.getResourceAsStream(FILE)) {
            return new Lettering(PDType0Font.load(document, file));
        }
    }

    PDFont font() {
        return font;
    }

    /** The text without what cannot be printed: controls become spaces, letters that the font lacks question marks. */
    String printable(String text) {
        StringBuilder clean = new StringBuilder();
        text.codePoints().forEach(c -> {
            String letter = Character.isISOControl(c) ? " " : Character.toString(c);
            clean.append(has(letter) ? letter : "?");
        });
        return clean.toString();
    }

    /** Width of a printable line of letters of this size. */
    double widthMm(String printable, double sizeMm) {
        try {
            return font.getStringWidth(printable) / 1000 * sizeMm;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The text broken between words into lines no wider than asked; a word that is wider alone is cut. */
    List<String> wrap(String text, double widthMm, double sizeMm) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : printable(text).trim().split("\\s+")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (widthMm(longer, sizeMm) <= widthMm) {
                line = longer;
            } else {
                if (!line.isEmpty()) {
                    lines.add(line);
                }
                line = cut(word, widthMm, sizeMm);
            }
        }
        if (!line.isEmpty()) {
            lines.add(line);
        }
        return lines;
    }

    /** As much of a line as is no wider than asked, with an ellipsis where something was left out. */
    String cut(String text, double widthMm, double sizeMm) {
        String line = printable(text);
        if (widthMm(line, sizeMm) <= widthMm) {
            return line;
        }
        int end = line.length();
        while (end > 0 && widthMm(line.substring(0, end) + "…", sizeMm) > widthMm) {
            end = line.offsetByCodePoints(end, -1);
        }
        return line.substring(0, end) + "…";
    }

    private boolean has(String letter) {
        try {
            font.encode(letter);
            return true;
        } catch (IllegalArgumentException e) {
            return false;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
