package weltwright.output.cutter;

import java.util.List;
import java.util.stream.Stream;
import weltwright.layout.StockLayout;
import weltwright.message.Messages;
import weltwright.output.PageHeading;
import weltwright.sheath.pattern.Pattern;
import weltwright.units.MeasureUnit;

/**
 * All that a machine is to cut, punch and mark for one sheath: each piece as often as it is needed, on as many beds as
 * that takes. In mm, y up, the lower left corner of the first bed at the origin.
 *
 * <p>A bed holds pieces of one thickness, since it holds one leather. Between pieces, and to the bed's rim, there are 5
 * mm. Pieces lie with their direction of least stretch along the bed's longer side, where the leather's backbone then
 * belongs; one that finds no room so is turned across, and one that finds none at all lies on a bed that is as large as
 * it needs.
 *
 * @param sheets bed by bed, the thickest leather first
 * @param sideUp the side of the leather that the machine sees; the pieces are drawn as they are seen from there
 * @param title whose pattern it is
 * @param advice plain sentences: a piece that is larger than the bed, or lies across the direction of least stretch
 */
public record CutPlan(List<CutSheet> sheets, LeatherSide sideUp, String title, List<String> advice) {
    /** The side of the square that is cut to see whether the machine is true. */
    public static final double SQUARE_MM = 50;

    /** The square's name in the drawings. */
    public static final String SQUARE_ID = "check-square";

    public CutPlan {
        sheets = List.copyOf(sheets);
        advice = List.copyOf(advice);
    }

    /** Lays the pieces out; texts are in mm. */
    public static CutPlan of(Pattern pattern, CutterBed bed, PageHeading heading) {
        return of(pattern, bed, heading, MeasureUnit.MILLIMETRE);
    }

    /**
     * Lays the pieces out.
     *
     * @param unit of the lengths in texts; the drawing is in mm in any case
     */
    public static CutPlan of(Pattern pattern, CutterBed bed, PageHeading heading, MeasureUnit unit) {
        return new BedLayout(bed, heading, unit).of(pattern);
    }

    /** Takes over a layout on stock, drawn as large as the stock and without a check square. */
    public static CutPlan of(StockLayout layout, LeatherSide sideUp, PageHeading heading) {
        return new CutPlan(
                List.of(StockSheet.of(layout, sideUp, heading)),
                sideUp,
                Messages.of(CutPlan.class)
                        .text("cut-plan.layout-on", layout.stock().name()),
                List.of());
    }

    /** Says how a drawing of it is meant. */
    String description() {
        return Messages.of(CutPlan.class).text("cut-plan.description", sideUp.words());
    }

    /** From the first bed's left side to the last one's right. */
    public double widthMm() {
        CutSheet last = sheets.get(sheets.size() - 1);
        return last.leftMm() + last.widthMm();
    }

    /** That of the highest bed. */
    public double heightMm() {
        return sheets.stream().mapToDouble(CutSheet::heightMm).max().orElseThrow();
    }

    /** All pieces, bed by bed. */
    public Stream<CutPiece> pieces() {
        return sheets.stream().flatMap(sheet -> sheet.pieces().stream());
    }

    /** All elements of a layer that belong to no piece. */
    public Stream<CutElement> notes() {
        return sheets.stream().flatMap(sheet -> sheet.notes().stream());
    }
}
