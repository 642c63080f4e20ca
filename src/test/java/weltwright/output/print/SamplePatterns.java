package weltwright.output.print;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.fit.DrawCheck;
import weltwright.fit.DrawPath;
import weltwright.fit.Retention;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.output.PageHeading;
import weltwright.output.pdf.PdfCanvas;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.SheathDimension;
import weltwright.sheath.pattern.SheathedKnife;
import weltwright.sheath.pattern.WeltStack;
import weltwright.sheath.spec.DrawHand;

/** Patterns made by hand: shaped as a sheath's are, and known to the last hole. */
final class SamplePatterns {
    static final PageHeading HEADING = new PageHeading(
            "Ylva Bräntholm",
            "Drop point, 105 mm",
            LocalDate.of(2024, 3, 9),
            "Likes a dark brown edge. Needs it by May.");

    static final DrawCheck DRAW =
            new DrawCheck(DrawPath.alongAxis(), new Retention(2, 0, 0, 0, List.of()), 6, List.of());

    static final SheathedKnife SHEATHED = new SheathedKnife(
            DrawHand.LEFT,
            PdfCanvas.box(new Point(0, 0), new Point(40, 120)),
            PdfCanvas.box(new Point(10, 10), new Point(30, 220)));

    private SamplePatterns() {}

    /** A body, a strap and two welts: all smaller than a page. */
    static Pattern small() {
        return new Pattern(
                List.of(body("body", 92, 205), welt(), strap()),
                List.of(),
                List.of(),
                DRAW,
                List.of(
                        new SheathDimension(SheathDimension.Kind.LENGTH_WITH_LOOP, 205),
                        new SheathDimension(SheathDimension.Kind.WIDTH, 46)),
                List.of(
                        new Advice.HoldsBladeAlone(),
                        new Advice.WeltThickness(
                                new WeltStack(List.of(new WeltStack.Sheets(2, 3.2))), 3.5, Optional.empty())),
                SHEATHED);
    }

    /** A body that no A4 page takes in one piece, and a welt that shares one of its pages. */
    static Pattern large() {
        return new Pattern(
                List.of(body("body", 230, 420), welt()), List.of(), List.of(), DRAW, List.of(), List.of(), SHEATHED);
    }

    /** An upright leaf of a piece with a stitch row along its right side. */
    static Piece body(String name, double width, double height) {
        List<Point> outline = new ArrayList<>();
        for (int i = 0; i <= 30; i++) {
            double t = Math.PI + Math.PI * i / 30;
            outline.add(new Point(width / 2 + width / 2 * Math.cos(t), height * 0.25 * (1 + Math.sin(t))));
        }
        outline.add(new Point(width, height * 0.8));
        outline.add(new Point(width * 0.6, height * 0.84));
        outline.add(new Point(width * 0.6, height));
        outline.add(new Point(width * 0.2, height));
        outline.add(new Point(width * 0.2, height * 0.84));
        outline.add(new Point(0, height * 0.8));

        List<Hole> holes = new ArrayList<>();
        List<Point> row = new ArrayList<>();
        int stitches = (int) (height * 0.5 / 4);
        for (int i = 0; i <= stitches; i++) {
            Point at = new Point(width - 3.5, height * 0.27 + 4.0 * i);
            row.add(at);
            holes.add(new Hole(at, 1, Hole.Use.STITCH));
        }
        holes.add(new Hole(new Point(width / 2, 8), 4, Hole.Use.DRAIN));
        List<Mark> marks = List.of(
                new Mark(Polyline.open(row), Mark.Kind.STITCH_ROW, ""),
                mark(Mark.Kind.STITCH_END, "start", width - 5.5, height * 0.27, width - 1.5, height * 0.27),
                mark(Mark.Kind.FOLD, "fold", width / 2, 4 + height * 0.02, width / 2, height * 0.8),
                mark(Mark.Kind.FOLD, "fold the loop back", width * 0.2, height * 0.86, width * 0.6, height * 0.86),
                mark(Mark.Kind.PLACE, "glue the loop's end here", width * 0.2, height * 0.7, width * 0.6, height * 0.7),
                mark(Mark.Kind.NOTCH, "1", width, height * 0.5, width - 3, height * 0.5),
                mark(Mark.Kind.GRAIN, "grain", width * 0.2, height * 0.3, width * 0.2, height * 0.5),
                new Mark(
                        Polyline.closed(List.of(
                                new Point(width * 0.55, height * 0.25),
                                new Point(width * 0.85, height * 0.35),
                                new Point(width * 0.85, height * 0.78),
                                new Point(width * 0.55, height * 0.78))),
                        Mark.Kind.KNIFE,
                        ""));
        return new Piece(Piece.Kind.BODY, name, name, 1, 3.2, Polyline.closed(outline), holes, marks);
    }

    /** A quarter of a ring, too narrow for much lettering. */
    static Piece welt() {
        List<Point> outline = new ArrayList<>();
        List<Hole> holes = new ArrayList<>();
        for (int i = 0; i <= 40; i++) {
            double t = Math.PI / 2 * i / 40;
            outline.add(new Point(100 * Math.cos(t), 100 * Math.sin(t)));
        }
        for (int i = 40; i >= 0; i--) {
            double t = Math.PI / 2 * i / 40;
            outline.add(new Point(90 * Math.cos(t), 90 * Math.sin(t)));
        }
        List<Point> row = new ArrayList<>();
        for (int i = 0; i <= 36; i++) {
            double t = Math.PI / 2 * (i + 1) / 38;
            Point at = new Point(96.5 * Math.cos(t), 96.5 * Math.sin(t));
            row.add(at);
            holes.add(new Hole(at, 1, Hole.Use.STITCH));
        }
        return new Piece(
                Piece.Kind.WELT,
                2,
                3.2,
                Polyline.closed(outline),
                holes,
                List.of(
                        new Mark(Polyline.open(row), Mark.Kind.STITCH_ROW, ""),
                        mark(Mark.Kind.NOTCH, "1", 90 * 0.6, 90 * 0.8, 93 * 0.6, 93 * 0.8)));
    }

    static Piece strap() {
        return new Piece(
                Piece.Kind.BELT_STRAP,
                "belt loop",
                "belt loop",
                1,
                3.2,
                PdfCanvas.box(new Point(0, 0), new Point(30, 120)),
                List.of(),
                List.of(mark(Mark.Kind.FOLD, "fold", 0, 60, 30, 60), mark(Mark.Kind.GRAIN, "", 24, 10, 24, 50)));
    }

    private static Mark mark(Mark.Kind kind, String label, double x1, double y1, double x2, double y2) {
        return new Mark(Polyline.open(List.of(new Point(x1, y1), new Point(x2, y2))), kind, label);
    }
}
