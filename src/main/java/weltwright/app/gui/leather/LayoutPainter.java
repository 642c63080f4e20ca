package weltwright.app.gui.leather;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.HashMap;
import java.util.Map;
import org.locationtech.jts.algorithm.MinimumAreaRectangle;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Coordinate;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.DimensionLinePainter;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.layout.PlacedPiece;
import weltwright.layout.stock.LeatherPiece;
import weltwright.units.MeasureUnit;

/** Paints stock with the pieces on it, in px. Sizes chosen by eye. */
final class LayoutPainter {
    private static final double DIMENSION_PX = 18;
    private static final double KNOB_PX = 6;
    private static final float LABEL_PX = 12;
    private static final float ARROW_PX = 36;
    private static final float LABEL_SCALE = 0.9f;

    /** Places along a piece that are tried for its name, and their distance. */
    private static final int PLACES_ALONG = 21;

    private static final int PLACE_PX = 6;

    /** How exactly the middle of the widest part of a piece is found. */
    private static final double INSIDE_MM = 1;

    /** Kept from one painting to the next, since they take time to find. */
    private final Map<LeatherPiece, LabelPlace> labelPlaces = new HashMap<>();

    /** How a piece is shown. */
    enum State {
        PLAIN,
        SELECTED,
        REFUSED
    }

    /** Paints the stock with its flaws, sizes and the line up to which it is used; no pieces. */
    void paintStock(Graphics2D g, Viewport viewport, StockDrawing drawing, MeasureUnit unit) {
        AffineTransform toPx = viewport.transform();
        Shape stock = toPx.createTransformedShape(drawing.stock());
        g.setColor(ThemeColors.leather());
        g.fill(stock);
        Shape clip = g.getClip();
        g.clip(stock);
        g.setColor(ThemeColors.welt());
        drawing.poorer().forEach(poorer -> g.fill(toPx.createTransformedShape(poorer)));
        g.setClip(clip);
        g.setColor(ThemeColors.canvas());
        drawing.flaws().forEach(flaw -> g.fill(toPx.createTransformedShape(flaw)));
        g.setColor(ThemeColors.cutLine());
        g.setStroke(AnnotationPainter.roundStroke(1));
        drawing.flaws().forEach(flaw -> g.draw(toPx.createTransformedShape(flaw)));
        g.setStroke(AnnotationPainter.roundStroke(1.6f));
        g.draw(stock);
        Rectangle2D extent = stock.getBounds2D();
        DimensionLinePainter sizes = new DimensionLinePainter(g);
        double offset = UIScale.scale((float) DIMENSION_PX);
        Rectangle2D mm = drawing.extent();
        sizes.paintHorizontal(
                extent.getMinX(),
                extent.getMaxY(),
                extent.getMaxX(),
                extent.getMaxY(),
                extent.getMaxY() + offset,
                unit.format(mm.getWidth(), 0));
        sizes.paintVertical(
                extent.getMinY(),
                extent.getMinX(),
                extent.getMaxY(),
                extent.getMinX(),
                extent.getMinX() - offset,
                unit.format(mm.getHeight(), 0));
        double used = drawing.usedX();
        if (used < mm.getMaxX() && !drawing.pieces().isEmpty()) {
            double x = viewport.toPx(new Point(used, 0)).x();
            g.setColor(ThemeColors.cutLine());
            g.setStroke(new BasicStroke(
                    UIScale.scale(1.4f), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {7, 5}, 0));
            g.draw(new Line2D.Double(x, extent.getMinY(), x, extent.getMaxY()));
        }
    }

    void paintPiece(Graphics2D g, Viewport viewport, PlacedPiece piece, Shape shape, Point shift, State state) {
        Shape cut = viewport.transform().createTransformedShape(shape);
        g.setColor(state == State.REFUSED ? withAlpha(ThemeColors.error(), 120) : ThemeColors.piece());
        g.fill(cut);
        g.setColor(
                switch (state) {
                    case PLAIN -> ThemeColors.cutLine();
                    case SELECTED -> ThemeColors.accent();
                    case REFUSED -> ThemeColors.error();
                });
        g.setStroke(AnnotationPainter.roundStroke(state == State.PLAIN ? 1.2f : 2.4f));
        g.draw(cut);
        paintLabel(g, viewport, piece, cut, shift);
    }

    /**
     * Paints name and number of the sheath: level where there is room, else along the piece, as near as may be to its
     * widest part, else the number alone, else nothing.
     */
    private void paintLabel(Graphics2D g, Viewport viewport, PlacedPiece piece, Shape cut, Point shift) {
        LabelPlace place = labelPlaces.computeIfAbsent(piece.piece(), LabelPlace::in);
        Point at = viewport.toPx(piece.motion().apply(place.inside()).plus(shift));
        Point along = viewport.toPx(
                        piece.motion().apply(place.inside().plus(place.along())).plus(shift))
                .minus(at);
        // Read from the left or from below, as dimensions on drawings are (ISO 129-1).
        double slope = along.x() == 0 ? -Math.PI / 2 : Math.atan(along.y() / along.x());
        String number = Integer.toString(piece.sheath() + 1);
        String name = piece.piece().piece().name() + " " + number;
        Graphics2D text = (Graphics2D) g.create();
        text.setFont(g.getFont().deriveFont(g.getFont().getSize2D() * LABEL_SCALE));
        text.setColor(ThemeColors.pieceText());
        if (!paintInside(text, name, 0, at, 1, cut) && !paintInside(text, name, slope, at, PLACES_ALONG, cut)) {
            paintInside(text, number, 0, at, 1, cut);
        }
        text.dispose();
    }

    /**
     * Paints a text within a shape, if it fits.
     *
     * @param angle by which it is turned clockwise
     * @param at where its middle is tried first
     * @param places number of places, to either side along the text, that are tried
     * @return whether it fitted
     */
    private static boolean paintInside(Graphics2D g, String text, double angle, Point at, int places, Shape within) {
        FontMetrics metrics = g.getFontMetrics();
        double width = metrics.stringWidth(text);
        double height = metrics.getAscent();
        Shape level = AffineTransform.getRotateInstance(-angle, at.x(), at.y()).createTransformedShape(within);
        for (int i = 0; i < places; i++) {
            double left = at.x() - width / 2 + (i % 2 == 0 ? i : -i - 1) / 2 * UIScale.scale(PLACE_PX);
            if (level.contains(left, at.y() - height / 2, width, height)) {
                AffineTransform before = g.getTransform();
                g.rotate(angle, at.x(), at.y());
                g.drawString(text, (float) left, (float) (at.y() + height / 2 - 1));
                g.setTransform(before);
                return true;
            }
        }
        return false;
    }

    /**
     * Where the label of a piece has most room.
     *
     * @param inside the middle of its widest part
     * @param along of length 1, the direction in which it is longest
     */
    private record LabelPlace(Point inside, Point along) {
        static LabelPlace in(LeatherPiece piece) {
            return new LabelPlace(
                    Point.of(MaximumInscribedCircle.getCenter(piece.outline().polygon(), INSIDE_MM)
                            .getCoordinate()),
                    longest(piece.outline()));
        }

        /** Returns the direction of the longer side of the smallest rectangle around an outline. */
        private static Point longest(Polyline outline) {
            Coordinate[] corners =
                    MinimumAreaRectangle.getMinimumRectangle(outline.polygon()).getCoordinates();
            Point first = Point.of(corners[1]).minus(Point.of(corners[0]));
            Point second = Point.of(corners[2]).minus(Point.of(corners[1]));
            return (first.norm() > second.norm() ? first : second).unit();
        }
    }

    /** Paints an arrow along the direction of least stretch, with its name, at the lower left corner of the canvas. */
    static void paintStretch(Graphics2D g, String name, double bottom) {
        double left = UIScale.scale(LABEL_PX);
        double length = UIScale.scale(ARROW_PX);
        double head = length / 8;
        FontMetrics metrics = g.getFontMetrics();
        double y = bottom - metrics.getHeight() / 2.0;
        g.setColor(ThemeColors.secondaryText());
        g.setStroke(AnnotationPainter.roundStroke(1.2f));
        g.draw(new Line2D.Double(left, y, left + length, y));
        for (int side : new int[] {-1, 1}) {
            g.draw(new Line2D.Double(left, y, left + head, y + side * head));
            g.draw(new Line2D.Double(left + length, y, left + length - head, y + side * head));
        }
        g.drawString(name, (float) (left + length + head), (float) (y + metrics.getAscent() / 2.0 - 1));
    }

    /** Paints the knob by which the selected piece is turned. */
    static void paintKnob(Graphics2D g, Viewport viewport, Point fromMm, Point knobMm) {
        Point from = viewport.toPx(fromMm);
        Point at = viewport.toPx(knobMm);
        double r = UIScale.scale((float) KNOB_PX);
        g.setColor(ThemeColors.accent());
        g.setStroke(AnnotationPainter.roundStroke(1.6f));
        g.draw(new Line2D.Double(from.x(), from.y(), at.x(), at.y()));
        Ellipse2D knob = new Ellipse2D.Double(at.x() - r, at.y() - r, 2 * r, 2 * r);
        g.setColor(ThemeColors.canvas());
        g.fill(knob);
        g.setColor(ThemeColors.accent());
        g.draw(knob);
    }

    /** The middle of a closed line's bounding box, about which a piece is turned. */
    static Point middle(Polyline outline) {
        return Point.of(outline.polygon().getEnvelopeInternal().centre());
    }

    private static Color withAlpha(Color color, int alpha) {
        return new Color(color.getRed(), color.getGreen(), color.getBlue(), alpha);
    }
}
