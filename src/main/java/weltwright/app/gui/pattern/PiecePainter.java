package weltwright.app.gui.pattern;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BasicStroke;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import javax.swing.UIManager;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.message.Messages;
import weltwright.output.pdf.LineStroke;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;
import weltwright.units.MeasureUnit;

/**
 * Paints one piece at its place in a drawing: leather, marks, holes and edge annotations. Sizes in px chosen by eye.
 */
public final class PiecePainter {
    private static final Messages TEXTS = Messages.of(PiecePainter.class);

    private static final double MIN_HOLE_PX = 1.6;
    private static final float[] DASHES = {7, 4};
    private static final float[] DOTS = {1.5f, 4};
    private static final double ARROWHEAD_PX = 9;
    private static final float LABEL_FONT_SCALE = 0.85f;
    private static final double LABEL_ALWAYS_PX_PER_MM = 4;
    private static final float LABEL_OFFSET_PX = 4;

    /** Chord over length from which a stretch counts as straight: it leaves the chord by 0.06 of its length. */
    private static final double STRAIGHT = 0.99;

    private static final double LETTER_OFFSET_PX = 13;
    private static final double LETTER_RADIUS_PX = 8.5;
    private static final int CAPTION_ABOVE_PX = 6;
    private static final int CAPTION_GAP_PX = 8;
    private static final float MIN_DASH_PX = 1.6f;

    private final Graphics2D g;
    private final Viewport viewport;
    private final PieceRowLayout.Placed placed;
    private final AffineTransform toPx;
    private final MeasureUnit unit;

    /** @param unit of the caption */
    public PiecePainter(Graphics2D g, Viewport viewport, PieceRowLayout.Placed placed, MeasureUnit unit) {
        this.unit = unit;
        this.g = g;
        this.viewport = viewport;
        this.placed = placed;
        toPx = viewport.transform();
        toPx.translate(placed.shift().x(), placed.shift().y());
    }

    /** Paints leather, marks and holes, without any words. */
    public void paintPiece() {
        g.setColor(ThemeColors.leather());
        g.fill(cut());
        placed.piece().marks().forEach(this::paintMark);
        placed.piece().holes().forEach(this::paintHole);
        paintCut();
    }

    /** Paints the piece with the labels of its marks and the annotations of its edges, without its caption. */
    void paintPiece(EdgeAnnotations annotations) {
        paintPiece();
        paintLabels();
        g.setColor(ThemeColors.cutLine());
        annotations.lines().forEach(line -> {
            g.setStroke(stroke(line.style().stroke(), viewport.pxPerMm()));
            g.draw(toPx.createTransformedShape(line.path()));
        });
        paintCut();
        annotations.letters().forEach(this::paintLetter);
    }

    private void paintCut() {
        g.setColor(ThemeColors.cutLine());
        g.setStroke(AnnotationPainter.roundStroke(1.6f));
        g.draw(cut());
    }

    private Shape cut() {
        return toPx.createTransformedShape(AnnotationPainter.path(placed.piece().outline()));
    }

    /** Returns a line style of the printed pattern at a zoom; dashes have a least length so that they stay visible. */
    static BasicStroke stroke(LineStroke pen, double pxPerMm) {
        float width = UIScale.scale((float) Math.max(0.9, Math.min(2, pen.widthMm() * pxPerMm)));
        if (pen.dashesMm().isEmpty()) {
            return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
        }
        float[] dashes = new float[pen.dashesMm().size()];
        for (int i = 0; i < dashes.length; i++) {
            dashes[i] =
                    Math.max(UIScale.scale(MIN_DASH_PX), (float) (pen.dashesMm().get(i) * pxPerMm));
        }
        return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dashes, 0);
    }

    /** Paints a letter in a ring, as on the printed pattern. */
    static void paintRingedLetter(Graphics2D g, String letter, Point centre) {
        double r = UIScale.scale((float) LETTER_RADIUS_PX);
        Shape ring = new Ellipse2D.Double(centre.x() - r, centre.y() - r, 2 * r, 2 * r);
        g.setColor(ThemeColors.canvas());
        g.fill(ring);
        g.setColor(ThemeColors.text());
        g.setStroke(AnnotationPainter.roundStroke(1));
        g.draw(ring);
        FontMetrics metrics = g.getFontMetrics();
        g.drawString(letter, (float) (centre.x() - metrics.stringWidth(letter) / 2.0), (float)
                (centre.y() + (metrics.getAscent() - metrics.getDescent()) / 2.0));
    }

    private void paintLetter(EdgeAnnotations.Letter letter) {
        double offset = UIScale.scale((float) LETTER_OFFSET_PX);
        Point anchor = px(letter.at());
        paintRingedLetter(
                g,
                letter.style().letter(),
                new Point(
                        anchor.x() + offset * letter.outward().x(),
                        anchor.y() - offset * letter.outward().y()));
    }

    /** The room for a piece's caption, in px: two lines, clear of the edges' letters and of the next caption. */
    static Dimension captionPx(Component canvas, Piece piece, MeasureUnit unit) {
        Font font = UIManager.getFont("Label.font");
        FontMetrics plain = canvas.getFontMetrics(font);
        FontMetrics bold = canvas.getFontMetrics(font.deriveFont(Font.BOLD));
        return new Dimension(
                Math.max(bold.stringWidth(piece.name()), plain.stringWidth(countAndThickness(piece, unit)))
                        + UIScale.scale(CAPTION_GAP_PX),
                2 * plain.getHeight() + captionAboveCutPx());
    }

    private static String countAndThickness(Piece piece, MeasureUnit unit) {
        return TEXTS.text("piece-painter.cut", piece.count(), unit.format(piece.thicknessMm()));
    }

    /** From the cut to the caption's lower line. */
    private static int captionAboveCutPx() {
        return UIScale.scale(CAPTION_ABOVE_PX) + (int) Math.ceil(2 * UIScale.scale((float) LETTER_RADIUS_PX));
    }

    /** Paints name, count and thickness above the piece. */
    void paintCaption() {
        Piece piece = placed.piece();
        Point px = viewport.toPx(new Point(placed.box().getX(), placed.box().getMaxY()));
        Font plain = g.getFont();
        float lower = (float) px.y() - captionAboveCutPx();
        g.setColor(ThemeColors.text());
        g.setFont(plain.deriveFont(Font.BOLD));
        g.drawString(piece.name(), (float) px.x(), lower - g.getFontMetrics().getHeight());
        g.setFont(plain);
        g.drawString(countAndThickness(piece, unit), (float) px.x(), lower);
    }

    private void paintHole(Hole hole) {
        Point px = px(hole.centre());
        double r = Math.max(MIN_HOLE_PX, hole.diameterMm() / 2 * viewport.pxPerMm());
        g.setColor(ThemeColors.hole());
        g.fill(new Ellipse2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r));
    }

    private void paintMark(Mark mark) {
        g.setColor(mark.kind() == Mark.Kind.KNIFE ? ThemeColors.knifeLine() : ThemeColors.markLine());
        g.setStroke(stroke(mark.kind()));
        g.draw(toPx.createTransformedShape(AnnotationPainter.path(mark.line())));
        List<Point> points = mark.line().points();
        Point last = px(points.get(points.size() - 1));
        if (mark.kind() == Mark.Kind.GRAIN) {
            Point back = px(points.get(points.size() - 2)).minus(last).unit().times(ARROWHEAD_PX);
            for (Point side : List.of(back.left(), back.left().times(-1))) {
                Point barb = last.plus(back).plus(side.times(0.5));
                g.draw(new Line2D.Double(last.x(), last.y(), barb.x(), barb.y()));
            }
        }
    }

    /** Paints the labels of the marks; that of the knife last, since it may stand at many places. */
    private void paintLabels() {
        List<Shape> painted = new ArrayList<>();
        placed.piece().marks().stream()
                .filter(mark -> !mark.label().isEmpty())
                .sorted(Comparator.comparing(mark -> mark.kind() == Mark.Kind.KNIFE))
                .forEach(mark -> paintLabel(mark, painted));
    }

    /**
     * Paints the label along the straight stretch of a mark that is nearest to its middle, upright; of a bent mark,
     * such as the knife, within it, away from the stitches. Where it has no room, only at a high zoom.
     *
     * @param painted the areas of the labels so far, which it keeps clear of; its own is added
     */
    private void paintLabel(Mark mark, List<Shape> painted) {
        Graphics2D rotated = (Graphics2D) g.create();
        rotated.setFont(g.getFont().deriveFont(g.getFont().getSize2D() * LABEL_FONT_SCALE));
        FontMetrics metrics = rotated.getFontMetrics();
        int width = metrics.stringWidth(mark.label());
        Optional<LabelBase> base = LabelBase.along(
                        mark.line(),
                        width / viewport.pxPerMm(),
                        metrics.getHeight() / viewport.pxPerMm(),
                        found -> isClear(area(found, width, metrics), painted))
                .or(() -> viewport.pxPerMm() >= LABEL_ALWAYS_PX_PER_MM
                        ? Optional.of(LabelBase.atMiddle(mark.line(), 1))
                        : Optional.empty());
        base.ifPresent(found -> {
            painted.add(area(found, width, metrics));
            rotated.transform(frame(found));
            rotated.setColor(ThemeColors.text());
            rotated.drawString(mark.label(), -width / 2f, isAbove(found) ? -LABEL_OFFSET_PX : metrics.getAscent());
        });
        rotated.dispose();
    }

    private static boolean isClear(Shape area, List<Shape> painted) {
        return painted.stream().allMatch(other -> {
            Area common = new Area(area);
            common.intersect(new Area(other));
            return common.isEmpty();
        });
    }

    /** Returns the area of a label, in px. */
    private Shape area(LabelBase base, int width, FontMetrics metrics) {
        double top = isAbove(base) ? -LABEL_OFFSET_PX - metrics.getAscent() : 0;
        return frame(base)
                .createTransformedShape(new Rectangle2D.Double(-width / 2.0, top, width, metrics.getHeight()));
    }

    /** Returns the frame of a label, whose origin lies at the middle of its base: x along the text. */
    private AffineTransform frame(LabelBase base) {
        Point from = px(base.from());
        Point along = px(base.to()).minus(from);
        double angle = Math.atan2(along.y(), along.x());
        AffineTransform frame =
                AffineTransform.getTranslateInstance(from.x() + along.x() / 2, from.y() + along.y() / 2);
        frame.rotate(isUpsideDown(angle) ? angle + Math.PI : angle);
        return frame;
    }

    private boolean isAbove(LabelBase base) {
        Point along = px(base.to()).minus(px(base.from()));
        return base.free() || base.left() != isUpsideDown(Math.atan2(along.y(), along.x()));
    }

    private static boolean isUpsideDown(double angle) {
        return angle > Math.PI / 2 - 1e-6 || angle < -Math.PI / 2 - 1e-6;
    }

    /**
     * The stretch of a mark along which its label stands.
     *
     * @param free whether the label may stand on either side
     * @param left whether it stands at the left from {@code from} to {@code to}
     */
    private record LabelBase(Point from, Point to, boolean free, boolean left) {

        static LabelBase atMiddle(Polyline line, double lengthMm) {
            double half = line.lengthMm() / 2;
            return new LabelBase(line.at(half - lengthMm / 2), line.at(half + lengthMm / 2), true, true);
        }

        /**
         * Finds the straight stretch nearest to the middle of a line; of a bent one, with room for the label inside.
         *
         * @param isClear whether no other label lies there
         */
        static Optional<LabelBase> along(
                Polyline line, double lengthMm, double heightMm, Predicate<LabelBase> isClear) {
            double half = line.lengthMm() / 2;
            if (!line.closed() && isStraight(line.at(0), line.at(2 * half), 2 * half)) {
                return Optional.of(atMiddle(line, lengthMm))
                        .filter(base -> lengthMm <= 2 * half)
                        .filter(isClear);
            }
            Path2D inside = AnnotationPainter.path(line);
            return DoubleStream.iterate(0, off -> off + lengthMm / 2 <= half, off -> off + lengthMm / 4)
                    .flatMap(off -> DoubleStream.of(half + off, half - off))
                    .boxed()
                    .flatMap(at -> {
                        Point from = line.at(at - lengthMm / 2);
                        Point to = line.at(at + lengthMm / 2);
                        Point left = to.minus(from).unit().left().times(heightMm);
                        return Stream.of(left, left.times(-1))
                                .filter(aside -> isStraight(from, to, lengthMm)
                                        && contains(inside, from.plus(aside))
                                        && contains(inside, to.plus(aside)))
                                .map(aside -> new LabelBase(from, to, false, aside.equals(left)));
                    })
                    .filter(isClear)
                    .findFirst();
        }

        private static boolean isStraight(Point from, Point to, double lengthMm) {
            return from.distance(to) > STRAIGHT * lengthMm;
        }

        private static boolean contains(Path2D area, Point point) {
            return area.contains(point.x(), point.y());
        }
    }

    private static BasicStroke stroke(Mark.Kind kind) {
        return switch (kind) {
            case FOLD -> dashed(1.4f, DASHES);
            case STITCH_ROW -> AnnotationPainter.roundStroke(0.6f);
            case KNIFE -> AnnotationPainter.roundStroke(1.2f);
            case PLACE, SKIVE -> dashed(1.2f, DOTS);
            case STITCH_END, NOTCH, GRAIN, IRON -> AnnotationPainter.roundStroke(1.4f);
        };
    }

    private static BasicStroke dashed(float width, float[] dashes) {
        return new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 1, dashes, 0);
    }

    private Point px(Point mm) {
        return viewport.toPx(mm.plus(placed.shift()));
    }
}
