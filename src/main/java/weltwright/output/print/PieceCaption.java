package weltwright.output.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import weltwright.geometry.Point;
import weltwright.message.Messages;
import weltwright.output.PageHeading;
import weltwright.sheath.pattern.CuttingSide;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.spec.DrawHand;
import weltwright.units.MeasureUnit;

/**
 * The text on a piece: its name, how many to cut and of what leather, which side is up, and whose it is.
 *
 * @param lines the name first
 * @param setOnTheKnife middles of holes whose place is found on the knife itself
 */
public record PieceCaption(List<String> lines, List<Point> setOnTheKnife) {
    private static final Messages TEXTS = Messages.of(PieceCaption.class);

    /** Longer names of knives and customers are cut off on a piece; the whole stands in the page's square. */
    private static final int LONGEST = 24;

    /** Returns the text with lengths in mm. */
    public static PieceCaption of(Pattern pattern, Piece piece, PageHeading heading) {
        return of(pattern, piece, heading, MeasureUnit.MILLIMETRE);
    }

    /** Returns the text with lengths in a unit. */
    public static PieceCaption of(Pattern pattern, Piece piece, PageHeading heading, MeasureUnit unit) {
        List<String> lines = new ArrayList<>();
        lines.add(capital(piece.name()));
        lines.add(TEXTS.text("piece-caption.cut-leather", piece.count(), unit.format(piece.thicknessMm(), 1)));
        lines.add(CuttingSide.of(pattern, piece).words());
        lines.add(String.join(
                " · ",
                Stream.of(hand(pattern), heading.knifeName(), heading.customer())
                        .map(PieceCaption::shortened)
                        .filter(text -> !text.isBlank())
                        .toList()));
        List<Point> setOnTheKnife = pattern.fastenings().stream()
                .flatMap(fastening -> fastening.setOnTheKnife().stream())
                .filter(layer -> layer.piece().equals(piece.name()))
                .flatMap(layer -> layer.holes().stream())
                .toList();
        return new PieceCaption(List.copyOf(lines), setOnTheKnife);
    }

    private static String hand(Pattern pattern) {
        return pattern.sheathed().hand() == DrawHand.LEFT
                ? TEXTS.text("piece-caption.left-hand")
                : TEXTS.text("piece-caption.right-hand");
    }

    private static String shortened(String text) {
        String one = text.strip().replaceAll("\\s+", " ");
        if (one.codePointCount(0, one.length()) <= LONGEST) {
            return one;
        }
        return one.substring(0, one.offsetByCodePoints(0, LONGEST - 1)).strip() + "…";
    }

    private static String capital(String name) {
        return name.isEmpty() ? name : name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    }
}
