package weltwright.app.gui.leather;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.HashMap;
import java.util.Map;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
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

    /** How exactly the middle of the widest part of a piece is found. */
    private static final double INSIDE_MM = 1;

    /** Kept from one painting to the next: a point well inside of each kind of piece takes time to find. */
    private final Map<LeatherPiece, Point> labelPlaces = new HashMap<>();

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

    /** Paints name and number of the sheath where there is room, else the number alone, else nothing. */
    private void paintLabel(Graphics2D g, Viewport viewport, PlacedPiece piece, Shape cut, Point shift) {
        Font font = g.getFont();
        g.setFont(font.deriveFont(font.getSize2D() * LABEL_SCALE));
        FontMetrics metrics = g.getFontMetrics();
        Point inside = labelPlaces.computeIfAbsent(piece.piece(), LayoutPainter::inside);
        Point at = viewport.toPx(piece.motion().apply(inside).plus(shift));
        String number = Integer.toString(piece.sheath() + 1);
        g.setColor(ThemeColors.pieceText());
        for (String text : new String[] {piece.piece().piece().name() + " " + number, number}) {
            double width = metrics.stringWidth(text);
            double height = metrics.getAscent();
            if (cut.contains(at.x() - width / 2, at.y() - height / 2, width, height)) {
                g.drawString(text, (float) (at.x() - width / 2), (float) (at.y() + height / 2 - 1));
                break;
            }
        }
        g.setFont(font);
    }

    private static Point inside(LeatherPiece piece) {
        return Point.of(MaximumInscribedCircle.getCenter(piece.outline().polygon(), INSIDE_MM)
                .getCoordinate());
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
