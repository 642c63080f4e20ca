package weltwright.window;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import weltwright.geometry.Point;
import weltwright.measure.Length;
import weltwright.sheath.Hole;
import weltwright.sheath.Mark;
import weltwright.sheath.Pattern;
import weltwright.sheath.Piece;

/** The pieces to cut, seen from the grain side, with their holes and marks. */
final class PatternView extends Drawing {
    private static final double LEAST_HOLE_PX = 1.6;
    private static final float[] DASHES = {7, 4};
    private static final float[] DOTS = {1.5f, 4};
    private static final double HEAD_PX = 9;
    private static final float LABEL_SHARE = 0.85f;
    private static final double NEAR_PX_PER_MM = 4;

    private Optional<Pattern> pattern = Optional.empty();
    private boolean inWork;

    PatternView() {
        setName("pattern drawing");
        getAccessibleContext().setAccessibleName("Pattern");
    }

    void show(Live.State<Pattern> state) {
        pattern = state.made();
        inWork = state.inWork();
        getAccessibleContext().setAccessibleDescription(pattern.map(PatternView::told).orElse("No pattern yet"));
        changed();
    }

    @Override
    protected Optional<Rectangle2D> extent() {
        return rows().map(PieceRows::extent);
    }

    @Override
    protected void paint(Graphics2D g, Viewport at) {
        rows().ifPresent(rows -> {
            for (PieceRows.Placed placed : rows.placed()) {
                paint(g, at, placed);
            }
            ruler(g, at);
        });
        if (inWork) {
            Words.plate(g, "drawing…", 12, 12);
        }
    }

    private Optional<PieceRows> rows() {
        double aspect = Math.max(1, getWidth()) / (double) Math.max(1, getHeight());
        return pattern.map(p -> PieceRows.of(p.pieces(), aspect));
    }

    private static void paint(Graphics2D g, Viewport at, PieceRows.Placed placed) {
        Piece piece = placed.piece();
        AffineTransform toPx = at.transform();
        toPx.translate(placed.shift().x(), placed.shift().y());
        Shape cut = toPx.createTransformedShape(Words.path(piece.outline()));
        g.setColor(Look.leather());
        g.fill(cut);
        piece.marks().forEach(mark -> paint(g, toPx, at.pxPerMm(), mark));
        piece.holes().forEach(hole -> paint(g, toPx, at.pxPerMm(), hole));
        g.setColor(Look.cut());
        g.setStroke(Words.pen(1.6f));
        g.draw(cut);
        title(g, at, placed);
    }

    private static void title(Graphics2D g, Viewport at, PieceRows.Placed placed) {
        Piece piece = placed.piece();
        Point px = at.toPx(new Point(placed.box().getX(), placed.box().getMaxY()));
        Font plain = g.getFont();
        FontMetrics metrics = g.getFontMetrics();
        g.setColor(Look.text());
        g.setFont(plain.deriveFont(Font.BOLD));
        g.drawString(piece.name() + ", cut " + piece.count(), (float) px.x(), (float) px.y() - metrics.getHeight() - 6);
        g.setFont(plain);
        g.drawString(
                new Length(piece.thicknessMm()).inMillimetres(), (float) px.x(), (float) px.y() - 8);
    }

    private static void paint(Graphics2D g, AffineTransform toPx, double pxPerMm, Hole hole) {
        Point px = at(toPx, hole.centre());
        double r = Math.max(LEAST_HOLE_PX, hole.diameterMm() / 2 * pxPerMm);
        g.setColor(Look.hole());
        g.fill(new Ellipse2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r));
    }

    private static void paint(Graphics2D g, AffineTransform toPx, double pxPerMm, Mark mark) {
        g.setColor(mark.kind() == Mark.Kind.KNIFE ? Look.knife() : Look.line());
        g.setStroke(stroke(mark.kind()));
        g.draw(toPx.createTransformedShape(Words.path(mark.line())));
        List<Point> points = mark.line().points();
        Point last = at(toPx, points.get(points.size() - 1));
        if (mark.kind() == Mark.Kind.GRAIN) {
            Point back = at(toPx, points.get(points.size() - 2)).minus(last).unit().times(HEAD_PX);
            for (Point side : List.of(back.left(), back.left().times(-1))) {
                Point barb = last.plus(back).plus(side.times(0.5));
                g.draw(new Line2D.Double(last.x(), last.y(), barb.x(), barb.y()));
            }
        }
        if (!mark.label().isEmpty()) {
            label(g, toPx, pxPerMm, mark);
        }
    }

    /** The words along the middle of the line, never upside down; where they are longer than it, only from near by. */
    private static void label(Graphics2D g, AffineTransform toPx, double pxPerMm, Mark mark) {
        Graphics2D turned = (Graphics2D) g.create();
        turned.setFont(g.getFont().deriveFont(g.getFont().getSize2D() * LABEL_SHARE));
        double half = mark.line().lengthMm() / 2;
        int width = turned.getFontMetrics().stringWidth(mark.label());
        var box = mark.line().lineString().getEnvelopeInternal();
        if (width <= Math.max(box.getWidth(), box.getHeight()) * pxPerMm || pxPerMm >= NEAR_PX_PER_MM) {
            Point middle = at(toPx, mark.line().at(half));
            Point along = at(toPx, mark.line().at(half + 0.5)).minus(at(toPx, mark.line().at(half - 0.5)));
            double angle = Math.atan2(along.y(), along.x());
            boolean upsideDown = angle > Math.PI / 2 - 1e-6 || angle < -Math.PI / 2 - 1e-6;
            turned.translate(middle.x(), middle.y());
            turned.rotate(upsideDown ? angle + Math.PI : angle);
            turned.setColor(Look.text());
            turned.drawString(mark.label(), -width / 2f, -4f);
        }
        turned.dispose();
    }

    private static BasicStroke stroke(Mark.Kind kind) {
        return switch (kind) {
            case FOLD -> dashed(1.4f, DASHES);
            case STITCH_ROW -> Words.pen(0.6f);
            case KNIFE -> Words.pen(1.2f);
            case PLACE, SKIVE -> dashed(1.2f, DOTS);
            case STITCH_END, NOTCH, GRAIN, IRON -> Words.pen(1.4f);
        };
    }

    private static BasicStroke dashed(float width, float[] dashes) {
        return new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 1, dashes, 0);
    }

    /** A bar of 50 mm, to get a feeling for the size. */
    private void ruler(Graphics2D g, Viewport at) {
        double length = 50 * at.pxPerMm();
        double y = getHeight() - 16;
        g.setColor(Look.text());
        g.setStroke(Words.pen(1.4f));
        g.draw(new Line2D.Double(16, y, 16 + length, y));
        g.draw(new Line2D.Double(16, y - 4, 16, y + 4));
        g.draw(new Line2D.Double(16 + length, y - 4, 16 + length, y + 4));
        g.drawString("50 mm", 20, (float) y - 6);
    }

    private static Point at(AffineTransform toPx, Point mm) {
        double[] px = {mm.x(), mm.y()};
        toPx.transform(px, 0, px, 0, 1);
        return new Point(px[0], px[1]);
    }

    private static String told(Pattern pattern) {
        StringBuilder told = new StringBuilder();
        pattern.pieces().forEach(p -> told.append(p.name()).append(", cut ").append(p.count()).append(". "));
        return told.toString().strip();
    }
}
