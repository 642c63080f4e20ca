package weltwright.output.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import weltwright.fit.DrawPath;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.output.PaperSize;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.PulledStrip;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.units.PrintScale;

/**
 * Print it, cut it out, and wrap it round the knife: the holes are read back from the pages of the PDF, the knife's own
 * sections are put between them, and at each station a strip of leather is pulled tight from stitch to stitch
 * ({@link PulledStrip}). It must be as long as the paper says. Sections, sweep and strip are worked out here, from the
 * knife's outline and its few numbers; nothing of the fit's code takes part.
 */
class PrintedFitTest {
    private static final double EASE_MM = 0.8;
    private static final double LEATHER_MM = 3;
    private static final double AGREES_MM = 0.5;

    /** Past a step from handle to blade leather cannot follow; so far on it may be looser than the knife. */
    private static final double AFTER_A_STEP_MM = 20;

    @TempDir
    static Path folder;

    /** @param name of the print */
    record Fitted(String name, Knife knife, SheathSpec spec, PaperSize paper) {
        @Override
        public String toString() {
            return name;
        }
    }

    static List<Fitted> sheaths() {
        Knife drop = TestKnives.dropPoint();
        Knife stout = new Knife(drop.outline(), drop.landmarks(), 6.5, 22, CrossSectionShape.usual(0.4));
        SheathSpec folded = TestSpecs.bladeAlone(SheathKind.FOLDED);
        SheathSpec panels = TestSpecs.bladeAlone(SheathKind.PANELS);
        SheathSpec edgeWelt = TestSpecs.bladeAlone(SheathKind.PANELS_EDGE_WELT);
        Leather flatBack = new Leather(LEATHER_MM, 0.5, 0, Leather.Bulge.FACE);
        return List.of(
                new Fitted("folded", drop, folded, PaperSize.A4),
                new Fitted("folded pouch", TestKnives.straight(), folded.withHandleDepthMm(45), PaperSize.LETTER),
                new Fitted("folded round a leaf", TestKnives.leaf(), folded, PaperSize.A4),
                new Fitted("panels", stout, panels, PaperSize.LETTER),
                new Fitted("panels, pouch", stout, panels.withHandleDepthMm(60), PaperSize.A4),
                new Fitted(
                        "flat back, pouch", stout, panels.withLeather(flatBack).withHandleDepthMm(60), PaperSize.A4),
                new Fitted("welt along the edge", drop, edgeWelt, PaperSize.A4),
                new Fitted("welt along the edge, pouch", drop, edgeWelt.withHandleDepthMm(50), PaperSize.LETTER),
                new Fitted("slim, on one page", TestKnives.straight(), panels, PaperSize.ONE_LARGE_PAGE));
    }

    @ParameterizedTest
    @MethodSource("sheaths")
    void theLeatherIsAsWideAsAStripPulledTightRoundTheKnife(Fitted sheath) throws IOException {
        Pattern pattern = PatternMaker.make(sheath.knife(), sheath.spec());
        assertThat(pattern.drawCheck().path()).as("this test draws straight").isEqualTo(DrawPath.alongAxis());
        Path file = folder.resolve(sheath.name() + ".pdf");
        PatternPdf.write(pattern, SamplePatterns.HEADING, sheath.paper(), PrintScale.TRUE, file);
        Cut cut = Cut.from(pattern, PageDrawing.readAll(file, PrintScale.TRUE));
        double step = sheath.spec().depth().throatMm(sheath.knife()) < 0 ? 0 : Double.NEGATIVE_INFINITY;
        double tip = sheath.knife().landmarks().tip().x() - 1.5;
        int looked = 0;
        for (int i = 1; i + 1 < cut.plane.size() && cut.plane.get(i).x() < tip && cut.runsAlong(i); i += 2) {
            double x = cut.plane.get(i).x();
            List<Point> room = passing(sheath.knife(), x);
            Widths widths = sheath.spec().kind() == SheathKind.FOLDED
                    ? folded(sheath, cut, i, room)
                    : panel(sheath, cut, i, room);
            assertThat(widths.paperMm).as("at %.1f mm", x).isGreaterThan(widths.stripMm - AGREES_MM);
            if (x < step || x > step + AFTER_A_STEP_MM) {
                assertThat(widths.paperMm).as("at %.1f mm", x).isCloseTo(widths.stripMm, within(AGREES_MM));
                looked++;
            }
        }
        assertThat(looked).as("stations").isGreaterThan(5);
    }

    /** From stitch to stitch across the leather, as printed and as a strip. */
    private record Widths(double paperMm, double stripMm) {}

    /** Both halves: each from its stitch to the middle of the fold, which lies at the ease beside the highest spine. */
    private static Widths folded(Fitted sheath, Cut cut, int i, List<Point> room) {
        double throat = sheath.spec().depth().throatMm(sheath.knife());
        double fold = EASE_MM
                + sheath.knife().outline().sampled(0.25).points().stream()
                        .filter(p -> p.x() >= throat)
                        .mapToDouble(Point::y)
                        .max()
                        .orElseThrow();
        double strip = new PulledStrip(sheath.spec(), cut.weltMm)
                .foldedHalfMm(room, cut.plane.get(i).y(), fold);
        return new Widths(cut.face.get(i).distance(cut.back.get(i)), 2 * strip);
    }

    /** The face, from its stitch on the edge's side to what is level with it on the spine's. */
    private static Widths panel(Fitted sheath, Cut cut, int i, List<Point> room) {
        double spine;
        Point onFace;
        if (sheath.spec().kind() == SheathKind.PANELS) {
            double level = cut.levelWith(cut.plane, cut.plane.get(i).x(), Point::x);
            spine = Cut.at(cut.plane, level).y();
            onFace = Cut.at(cut.face, level);
        } else {
            onFace = Cut.at(cut.face, cut.levelWith(cut.face, -cut.face.get(i).y(), p -> -p.y()));
            List<Double> stitches = PatternMaker.madeUp(sheath.knife(), sheath.spec())
                    .sections()
                    .at(cut.plane.get(i).x())
                    .stitches();
            spine = stitches.get(1);
        }
        double strip = new PulledStrip(sheath.spec(), cut.weltMm)
                .faceMm(room, cut.plane.get(i).y(), spine);
        return new Widths(cut.face.get(i).distance(onFace), strip);
    }

    /** The upper half of all of the knife that passes a station on its way out, close together. */
    private static List<Point> passing(Knife knife, double xMm) {
        Polyline outline = knife.outline().sampled(0.25);
        double tip = knife.landmarks().tip().x();
        List<Point> passing = new ArrayList<>();
        for (double x = xMm; x < tip; x += 1.5) {
            double[] sides = outline.crossings(x);
            double edge = sides[0];
            double spine = sides[sides.length - 1];
            passing.addAll(x < knife.landmarks().heel().x() ? handle(knife, edge, spine) : blade(knife, edge, spine));
        }
        return passing;
    }

    /** Lamé's curve of exponent 2.5, as {@link CrossSectionShape#usual} has a handle. */
    private static List<Point> handle(Knife knife, double edge, double spine) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i <= 90; i++) {
            double angle = Math.PI * i / 90;
            double across = Math.copySign(Math.pow(Math.abs(Math.cos(angle)), 0.8), Math.cos(angle));
            points.add(new Point(
                    (edge + spine) / 2 + (spine - edge) / 2 * across,
                    knife.handleThicknessMm() / 2 * Math.pow(Math.sin(angle), 0.8)));
        }
        return points;
    }

    /**
     * Ground flat from spine to edge: at the heel as thick as was measured, and where it is lower, thinner in
     * proportion.
     */
    private static List<Point> blade(Knife knife, double edge, double spine) {
        double atHeel =
                knife.landmarks().spineStart().y() - knife.landmarks().heel().y();
        double thin = knife.shaping().edgeThicknessMm() / 2;
        double share = Math.min(1, (spine - edge) / atHeel);
        double thick = thin + share * (knife.spineThicknessMm() / 2 - thin);
        List<Point> points = new ArrayList<>();
        for (int i = 0; i <= 60; i++) {
            double t = i / 60.0;
            double y = edge + t * (spine - edge);
            points.add(new Point(y, thin + Math.min(1, (y - edge) / atHeel) * (knife.spineThicknessMm() / 2 - thin)));
            points.add(new Point(spine, t * thick));
        }
        return points;
    }

    /**
     * The stitch holes as they stand on the paper, in the order of sewing.
     *
     * @param face on the face, in its own frame
     * @param back on the back
     * @param plane on the welt, in the knife's frame: where the stitches are when it is sewn
     * @param weltMm of all layers of the welt
     */
    private record Cut(List<Point> face, List<Point> back, List<Point> plane, double weltMm) {
        static Cut from(Pattern pattern, List<PageDrawing> pages) {
            List<Seam.Layer> layers = pattern.seams().get(0).layers();
            List<Point> welt = printed(pattern, layers.get(1), pages);
            // Pieces are laid tip down; the welt of a right-handed sheath lies with the edge's side on the right.
            return new Cut(
                    printed(pattern, layers.get(0), pages),
                    printed(pattern, layers.get(layers.size() - 1), pages),
                    welt.stream().map(p -> new Point(-p.y(), -p.x())).toList(),
                    layers.get(1).thicknessMm());
        }

        private static List<Point> printed(Pattern pattern, Seam.Layer layer, List<PageDrawing> pages) {
            Piece piece = pattern.pieces().stream()
                    .filter(p -> p.name().equals(layer.piece()))
                    .findFirst()
                    .orElseThrow();
            return layer.holes().stream()
                    .map(hole -> printed(piece, hole, pages))
                    .toList();
        }

        /** The circle that is drawn for a hole, back in the frame of its piece. */
        private static Point printed(Piece piece, Point hole, List<PageDrawing> pages) {
            for (PageDrawing page : pages) {
                for (ShownPiece shown : ShownPiece.on(page, piece)) {
                    Point near = shown.placement().apply(hole);
                    var circle = page.strokes().stream()
                            .filter(line -> line.isCircle(1.2) && line.centre().distance(near) < 0.5)
                            .min(Comparator.comparingDouble(
                                    line -> line.centre().distance(near)));
                    if (circle.isPresent() && shown.window().contains(near.coordinate())) {
                        return shown.placement().inverse().apply(circle.get().centre());
                    }
                }
            }
            throw new AssertionError("no hole is printed at " + hole + " of the " + piece.name());
        }

        /** Whether the row still runs rather along the knife than across it: before it turns round the tip. */
        boolean runsAlong(int i) {
            Point step = plane.get(i + 1).minus(plane.get(i));
            return step.x() > Math.abs(step.y());
        }

        /** Where on a row, counted in holes, its other side is as deep as some hole: past its deepest point. */
        double levelWith(List<Point> row, double deep, ToDoubleFunction<Point> depth) {
            for (int k = row.size() - 1; k > 0; k--) {
                double here = depth.applyAsDouble(row.get(k));
                double next = depth.applyAsDouble(row.get(k - 1));
                if (here <= deep && deep <= next) {
                    return k - (deep - here) / (next - here);
                }
            }
            return row.size() - 1;
        }

        static Point at(List<Point> row, double place) {
            int k = (int) Math.min(row.size() - 2, Math.floor(place));
            return row.get(k).towards(row.get(k + 1), place - k);
        }
    }
}
