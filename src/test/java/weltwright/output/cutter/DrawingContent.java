package weltwright.output.cutter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;

/**
 * What was found in a file for a cutter, in mm and y up, whoever read it.
 *
 * @param layersOn names of the layers that are switched on, in small letters
 */
record DrawingContent(Set<String> layersOn, List<Line> lines, List<Round> circles, List<Text> texts) {
    /** A quarter of what the bench can tell. */
    private static final double TOLERANCE_MM = 0.01;

    record Line(String layer, boolean closed, List<Point> points) {}

    record Round(String layer, Point centre, double radiusMm) {}

    record Text(String layer, Point from, double heightMm, String words) {}

    List<Line> cuts() {
        return lines.stream()
                .filter(line -> line.layer().equals(CutLayer.CUT.id()))
                .toList();
    }

    /**
     * Every piece is cut as often as the pattern says, in its true shape, with all of its holes, and nothing else is.
     */
    void holdsAllPiecesOf(Pattern pattern, LeatherSide up) {
        List<Line> left = new ArrayList<>(cuts());
        int holes = 0;
        for (Piece piece : pattern.pieces()) {
            List<Line> found =
                    left.stream().filter(line -> isCutOf(line, piece, up)).toList();
            assertThat(found).as(piece.name()).hasSizeGreaterThanOrEqualTo(piece.count());
            for (Line cut : found.subList(0, piece.count())) {
                left.remove(cut);
                holes += piece.holes().size();
                hasHoles(cut, piece, up);
            }
        }
        assertThat(left)
                .as("the check square, and nothing else")
                .singleElement()
                .satisfies(DrawingContent::isTrueSquare);
        assertThat(circles).hasSize(holes).allMatch(circle -> circle.layer().equals(CutLayer.PUNCH.id()));
    }

    private static void isTrueSquare(Line square) {
        assertThat(square.closed()).isTrue();
        assertThat(square.points()).hasSize(4);
        for (int i = 0; i < 4; i++) {
            double diagonal = square.points().get(i).distance(square.points().get((i + 2) % 4));
            double side = square.points().get(i).distance(square.points().get((i + 1) % 4));
            assertThat(side).isBetween(50 - TOLERANCE_MM, 50 + TOLERANCE_MM);
            assertThat(diagonal).isBetween(Math.hypot(50, 50) - TOLERANCE_MM, Math.hypot(50, 50) + TOLERANCE_MM);
        }
    }

    private static boolean isCutOf(Line line, Piece piece, LeatherSide up) {
        List<Point> wanted = piece.outline().points();
        if (!line.closed() || line.points().size() != wanted.size()) {
            return false;
        }
        Motion motion = Motion.of(piece, line, up);
        for (int i = 0; i < wanted.size(); i++) {
            if (motion.apply(wanted.get(i)).distance(line.points().get(i)) > TOLERANCE_MM) {
                return false;
            }
        }
        return true;
    }

    private void hasHoles(Line cut, Piece piece, LeatherSide up) {
        Motion motion = Motion.of(piece, cut, up);
        for (Hole hole : piece.holes()) {
            Point at = motion.apply(hole.centre());
            assertThat(circles)
                    .as("hole of the %s at %s", piece.name(), at)
                    .anyMatch(circle -> circle.centre().distance(at) < TOLERANCE_MM
                            && Math.abs(2 * circle.radiusMm() - hole.diameterMm()) < TOLERANCE_MM);
        }
    }

    /**
     * The rigid motion, after mirroring where the flesh side is up, that takes two far points of a piece to their
     * images.
     */
    private record Motion(boolean mirrored, Point from, Point to, double cos, double sin) {
        static Motion of(Piece piece, Line line, LeatherSide up) {
            boolean mirrored = up == LeatherSide.FLESH;
            List<Point> points = piece.outline().points().stream()
                    .map(p -> mirrored ? new Point(-p.x(), p.y()) : p)
                    .toList();
            int far = 0;
            for (int i = 1; i < points.size(); i++) {
                far = points.get(0).distance(points.get(i)) > points.get(0).distance(points.get(far)) ? i : far;
            }
            Point ours = points.get(far).minus(points.get(0)).unit();
            Point theirs = line.points().get(far).minus(line.points().get(0)).unit();
            return new Motion(mirrored, points.get(0), line.points().get(0), ours.dot(theirs), ours.cross(theirs));
        }

        Point apply(Point inPiece) {
            Point p = (mirrored ? new Point(-inPiece.x(), inPiece.y()) : inPiece).minus(from);
            return new Point(cos * p.x() - sin * p.y(), sin * p.x() + cos * p.y()).plus(to);
        }
    }

    /** Every element of the plan is in the drawing, and nothing else. */
    void holdsAllOf(CutPlan plan) {
        List<CutElement> elements = new ArrayList<>(plan.notes().toList());
        plan.pieces().forEach(piece -> elements.addAll(piece.elements()));
        int found = 0;
        for (CutElement element : elements) {
            String layer = element.layer().id();
            if (element.shape() instanceof CutElement.Chain chain) {
                assertThat(lines).anyMatch(line -> line.layer().equals(layer) && same(chain.line(), line));
            } else if (element.shape() instanceof CutElement.Text text) {
                assertThat(texts)
                        .anyMatch(drawn -> drawn.layer().equals(layer)
                                && drawn.words().equals(text.text())
                                && drawn.from().distance(text.from()) < TOLERANCE_MM);
            }
            found++;
        }
        assertThat(lines.size() + circles.size() + texts.size()).isEqualTo(found);
    }

    private static boolean same(Polyline ours, Line theirs) {
        if (ours.closed() != theirs.closed()
                || ours.points().size() != theirs.points().size()) {
            return false;
        }
        for (int i = 0; i < ours.points().size(); i++) {
            if (ours.points().get(i).distance(theirs.points().get(i)) > TOLERANCE_MM) {
                return false;
            }
        }
        return true;
    }

    static String small(String layer) {
        return layer.toLowerCase(Locale.ROOT);
    }
}
