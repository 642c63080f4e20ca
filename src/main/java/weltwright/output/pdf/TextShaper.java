package weltwright.output.pdf;

import java.awt.Font;
import java.awt.font.GlyphVector;
import java.text.Bidi;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Sets one line of text of any script: chooses the font of each character, puts right-to-left text in its order (the
 * Unicode bidirectional algorithm, as {@link Bidi} has it), and has what is not in the embedded typeface joined and
 * placed by Java's text layout (HarfBuzz).
 */
final class TextShaper {
    /** An extended grapheme cluster. */
    static final Pattern CLUSTER = Pattern.compile("\\X");

    private final IntPredicate inTypeface;
    private final ToDoubleFunction<String> widthEm;

    /**
     * @param inTypeface whether the embedded typeface has a character
     * @param widthEm of text that it has all characters of
     */
    TextShaper(IntPredicate inTypeface, ToDoubleFunction<String> widthEm) {
        this.inTypeface = inTypeface;
        this.widthEm = widthEm;
    }

    /**
     * A character as a reader sees it.
     *
     * @param font that draws it; empty for the embedded typeface
     */
    private record Cluster(String text, Optional<Font> font) {}

    /** What a reader sees as single characters: extended grapheme clusters (Unicode Standard Annex 29). */
    static List<String> clusters(String text) {
        List<String> clusters = new ArrayList<>();
        Matcher matcher = CLUSTER.matcher(text);
        while (matcher.find()) {
            clusters.add(matcher.group());
        }
        return clusters;
    }

    /** Whether a cluster can be drawn at all. */
    boolean draws(String cluster) {
        return isInTypeface(cluster)
                || isInvisible(cluster)
                || FallbackFonts.covering(cluster).isPresent();
    }

    private boolean isInTypeface(String cluster) {
        int c = cluster.codePointAt(0);
        return Character.charCount(c) == cluster.length() && inTypeface.test(c);
    }

    /** Characters that only steer how others are written. */
    private static boolean isInvisible(String cluster) {
        return cluster.codePoints().allMatch(c -> Character.getType(c) == Character.FORMAT);
    }

    /** @param text of which every cluster can be drawn */
    ShapedText line(String text) {
        if (text.codePoints().allMatch(c -> c < 0x300 && inTypeface.test(c) && c != 0xAD)) {
            return text.isEmpty()
                    ? new ShapedText(List.of(), 0)
                    : new ShapedText(List.of(new ShapedText.Letters(0, text)), widthEm.applyAsDouble(text));
        }
        Bidi bidi = new Bidi(text, isRightToLeft(text) ? Bidi.DIRECTION_RIGHT_TO_LEFT : Bidi.DIRECTION_LEFT_TO_RIGHT);
        Integer[] runs = new Integer[bidi.getRunCount()];
        byte[] levels = new byte[runs.length];
        for (int i = 0; i < runs.length; i++) {
            runs[i] = i;
            levels[i] = (byte) bidi.getRunLevel(i);
        }
        Bidi.reorderVisually(levels, 0, runs, 0, runs.length);
        List<ShapedText.Part> parts = new ArrayList<>();
        double x = 0;
        for (int run : runs) {
            boolean rightToLeft = bidi.getRunLevel(run) % 2 == 1;
            x = set(text.substring(bidi.getRunStart(run), bidi.getRunLimit(run)), rightToLeft, x, parts);
        }
        return new ShapedText(List.copyOf(parts), x);
    }

    /** A line of right-to-left letters alone reads from the right; among words from the left it does not. */
    private static boolean isRightToLeft(String text) {
        boolean has = false;
        for (int c : text.codePoints().toArray()) {
            byte direction = Character.getDirectionality(c);
            if (direction == Character.DIRECTIONALITY_LEFT_TO_RIGHT) {
                return false;
            }
            has |= direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT
                    || direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC;
        }
        return has;
    }

    /** Adds the parts of a run of one direction; returns where the next begins. */
    private double set(String run, boolean rightToLeft, double xEm, List<ShapedText.Part> parts) {
        List<Cluster> stretches = new ArrayList<>();
        for (String cluster : clusters(run)) {
            if (isInvisible(cluster)) {
                continue;
            }
            Optional<Font> font = isInTypeface(cluster) ? Optional.empty() : FallbackFonts.covering(cluster);
            int last = stretches.size() - 1;
            if (last >= 0 && stretches.get(last).font.equals(font)) {
                stretches.set(last, new Cluster(stretches.get(last).text + cluster, font));
            } else {
                stretches.add(new Cluster(cluster, font));
            }
        }
        double x = xEm;
        for (int i = 0; i < stretches.size(); i++) {
            Cluster stretch = stretches.get(rightToLeft ? stretches.size() - 1 - i : i);
            if (stretch.font.isEmpty()) {
                String text = rightToLeft ? mirrored(stretch.text) : stretch.text;
                parts.add(new ShapedText.Letters(x, text));
                x += widthEm.applyAsDouble(text);
            } else {
                char[] chars = stretch.text.toCharArray();
                GlyphVector glyphs = stretch.font
                        .get()
                        .layoutGlyphVector(
                                FallbackFonts.UNHINTED,
                                chars,
                                0,
                                chars.length,
                                rightToLeft ? Font.LAYOUT_RIGHT_TO_LEFT : Font.LAYOUT_LEFT_TO_RIGHT);
                parts.add(new ShapedText.Outlines(x, stretch.text, glyphs.getOutline()));
                x += glyphs.getGlyphPosition(glyphs.getNumGlyphs()).getX() / FallbackFonts.UNITS_PER_EM;
            }
        }
        return x;
    }

    /** The last character first, and brackets the other way round: rule L4 of the bidirectional algorithm. */
    private static String mirrored(String text) {
        String brackets = "()[]{}<>«»‹›";
        StringBuilder reversed = new StringBuilder(text).reverse();
        for (int i = 0; i < reversed.length(); i++) {
            int at = brackets.indexOf(reversed.charAt(i));
            if (at >= 0) {
                reversed.setCharAt(i, brackets.charAt(at ^ 1));
            }
        }
        return reversed.toString();
    }
}
