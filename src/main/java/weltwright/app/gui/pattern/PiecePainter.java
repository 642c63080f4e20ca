package weltwright.app.gui.pattern;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.util.List;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.output.pdf.LineStroke;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;
import weltwright.units.Length;

/** Paints one piece where it lies in a drawing: the leather, its marks and holes, and what its edges are. */
final class PiecePainter {
    private static final double LEAST_HOLE_PX = 1.6;
    private static final float[] DASHES = {7, 4};
    private static final float[] DOTS = {1.5f, 4};
    private static final double HEAD_PX = 9;
    private static final float LABEL_SHARE = 0.85f;
    private static final double NEAR_PX_PER_MM = 4;
    private static final double LETTER_OFF_PX = 13;
    private static final double LETTER_RADIUS_PX = 8.5;
    private static final float LEAST_DASH_PX = 1.6f;

    private final Graphics2D g;
    private final Viewport at;
    private final PieceRowLayout.Placed placed;
    private final AffineTransform toPx;

    PiecePainter(Graphics2D g, Viewport at, PieceRowLayout.Placed placed) {
        this.g = g;
        this.at = at;
        this.placed = placed;
        toPx = at.transform();
        toPx.translate(placed.shift().x(), placed.shift().y());
    }

    void piece(EdgeAnnotations edges) {
        Piece piece = placed.piece();
        Shape cut = toPx.createTransformedShape(AnnotationPainter.path(piece.outline()));
        g.setColor(ThemeColors.leather());
        g.fill(cut);
        piece.marks().forEach(this::mark);
        piece.holes().forEach(this::hole);
        g.setColor(ThemeColors.cutLine());
        edges.lines().forEach(line -> {
            g.setStroke(stroke(line.style().pen(), at.pxPerMm()));
            g.draw(toPx.createTransformedShape(line.path()));
        });
        g.setStroke(AnnotationPainter.pen(1.6f));
        g.draw(cut);
        edges.letters().forEach(this::letter);
        title();
    }

    /** The pen of the paper in this zoom; far out its dashes stay apart. */
    static BasicStroke stroke(LineStroke pen, double pxPerMm) {
        float width = UIScale.scale((float) Math.max(0.9, Math.min(2, pen.widthMm() * pxPerMm)));
        if (pen.dashesMm().isEmpty()) {
            return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
        }
        float[] dashes = new float[pen.dashesMm().size()];
        for (int i = 0; i < dashes.length; i++) {
            dashes[i] = Math.max(
                    UIScale.scale(LEAST_DASH_PX), (float) (pen.dashesMm().get(i) * pxPerMm));
        }
        return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dashes, 0);
    }

    /** A letter in a ring, as on paper. */
    static void ring(Graphics2D g, String letter, Point centre) {
        double r = UIScale.scale((float) LETTER_RADIUS_PX);
        Shape ring = new Ellipse2D.Double(centre.x() - r, centre.y() - r, 2 * r, 2 * r);
        g.setColor(ThemeColors.canvas());
        g.fill(ring);
        g.setColor(ThemeColors.text());
        g.setStroke(AnnotationPainter.pen(1));
        g.draw(ring);
        FontMetrics metrics = g.getFontMetrics();
        g.drawString(letter, (float) (centre.x() - metrics.stringWidth(letter) / 2.0), (float)
                (centre.y() + (metrics.getAscent() - metrics.getDescent()) / 2.0));
    }

    private void letter(EdgeAnnotations.Letter letter) {
        double off = UIScale.scale((float) LETTER_OFF_PX);
        Point on = px(letter.at());
        ring(
                g,
                letter.style().letter(),
                new Point(
                        on.x() + off * letter.outwards().x(),
                        on.y() - off * letter.outwards().y()));
    }

    /** Two short lines, so that narrow pieces stand close and can still be told apart. */
    private void title() {
        Piece piece = placed.piece();
        Point px = at.toPx(new Point(placed.box().getX(), placed.box().getMaxY()));
        Font plain = g.getFont();
        FontMetrics metrics = g.getFontMetrics();
        double clear = 2 * UIScale.scale((float) LETTER_RADIUS_PX);
        g.setColor(ThemeColors.text());
        g.setFont(plain.deriveFont(Font.BOLD));
        g.drawString(piece.name(), (float) px.x(), (float) (px.y() - metrics.getHeight() - 6 - clear));
        g.setFont(plain);
        String cut = "cut " + piece.count() + ", " + new Length(piece.thicknessMm()).inMillimetres();
        g.drawString(cut, (float) px.x(), (float) (px.y() - 8 - clear));
    }

    private void hole(Hole hole) {
        Point px = px(hole.centre());
        double r = Math.max(LEAST_HOLE_PX, hole.diameterMm() / 2 * at.pxPerMm());
        g.setColor(ThemeColors.hole());
        g.fill(new Ellipse2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r));
    }

    private void mark(Mark mark) {
        g.setColor(mark.kind() == Mark.Kind.KNIFE ? ThemeColors.knifeLine() : ThemeColors.markLine());
        g.setStroke(stroke(mark.kind()));
        g.draw(toPx.createTransformedShape(AnnotationPainter.path(mark.line())));
        List<Point> points = mark.line().points();
        Point last = px(points.get(points.size() - 1));
        if (mark.kind() == Mark.Kind.GRAIN) {
            Point back = px(points.get(points.size() - 2)).minus(last).unit().times(HEAD_PX);
            for (Point side : List.of(back.left(), back.left().times(-1))) {
                Point barb = last.plus(back).plus(side.times(0.5));
                g.draw(new Line2D.Double(last.x(), last.y(), barb.x(), barb.y()));
            }
        }
        if (!mark.label().isEmpty()) {
            label(mark);
        }
    }

    /** The words along the middle of the line, never upside down; where they are longer than it, only from near by. */
    private void label(Mark mark) {
        Graphics2D turned = (Graphics2D) g.create();
        turned.setFont(g.getFont().deriveFont(g.getFont().getSize2D() * LABEL_SHARE));
        double half = mark.line().lengthMm() / 2;
        int width = turned.getFontMetrics().stringWidth(mark.label());
        var box = mark.line().lineString().getEnvelopeInternal();
        if (width <= Math.max(box.getWidth(), box.getHeight()) * at.pxPerMm() || at.pxPerMm() >= NEAR_PX_PER_MM) {
            Point middle = px(mark.line().at(half));
            Point along = px(mark.line().at(half + 0.5)).minus(px(mark.line().at(half - 0.5)));
            double angle = Math.atan2(along.y(), along.x());
            boolean upsideDown = angle > Math.PI / 2 - 1e-6 || angle < -Math.PI / 2 - 1e-6;
            turned.translate(middle.x(), middle.y());
            turned.rotate(upsideDown ? angle + Math.PI : angle);
            turned.setColor(ThemeColors.text());
            turned.drawString(mark.label(), -width / 2f, -4f);
        }
        turned.dispose();
    }

    private static BasicStroke stroke(Mark.Kind kind) {
        return switch (kind) {
            case FOLD -> dashed(1.4f, DASHES);
            case STITCH_ROW -> AnnotationPainter.pen(0.6f);
            case KNIFE -> AnnotationPainter.pen(1.2f);
            case PLACE, SKIVE -> dashed(1.2f, DOTS);
            case STITCH_END, NOTCH, GRAIN, IRON -> AnnotationPainter.pen(1.4f);
        };
    }

    private static BasicStroke dashed(float width, float[] dashes) {
        return new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 1, dashes, 0);
    }

    private Point px(Point mm) {
        return at.toPx(mm.plus(placed.shift()));
    }
}
