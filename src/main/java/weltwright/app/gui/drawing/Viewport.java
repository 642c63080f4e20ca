package weltwright.app.gui.drawing;

import java.awt.Insets;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import weltwright.geometry.Point;

/**
 * Which part of a drawing in mm, y up, a component shows.
 *
 * @param pxPerMm zoom
 * @param centre the place at the middle of the component, in mm
 * @param widthPx of the component
 * @param heightPx of the component
 */
public record Viewport(double pxPerMm, Point centre, double widthPx, double heightPx) {
    private static final double LEAST_PX_PER_MM = 0.2;
    private static final double MOST_PX_PER_MM = 200;

    public Viewport {
        pxPerMm = Math.max(LEAST_PX_PER_MM, Math.min(MOST_PX_PER_MM, pxPerMm));
    }

    /** All of {@code extent}, in mm, with so many pixels left free on each side. */
    static Viewport fit(Rectangle2D extent, double widthPx, double heightPx, Insets free) {
        double across = Math.max(1, widthPx - free.left - free.right) / Math.max(1e-3, extent.getWidth());
        double down = Math.max(1, heightPx - free.top - free.bottom) / Math.max(1e-3, extent.getHeight());
        Point centre = new Point(extent.getCenterX(), extent.getCenterY());
        return new Viewport(Math.min(across, down), centre, widthPx, heightPx)
                .panned((free.left - free.right) / 2.0, (free.top - free.bottom) / 2.0);
    }

    Viewport sized(double newWidthPx, double newHeightPx) {
        return new Viewport(pxPerMm, centre, newWidthPx, newHeightPx);
    }

    /** Zoomed so that the place under a pixel stays there. */
    Viewport zoomed(double factor, Point aboutPx) {
        Point held = toMm(aboutPx);
        Viewport nearer = new Viewport(pxPerMm * factor, centre, widthPx, heightPx);
        return new Viewport(nearer.pxPerMm, centre.plus(held.minus(nearer.toMm(aboutPx))), widthPx, heightPx);
    }

    /** The drawing moved by so many pixels, to the right and down. */
    Viewport panned(double rightPx, double downPx) {
        Point shift = new Point(-rightPx / pxPerMm, downPx / pxPerMm);
        return new Viewport(pxPerMm, centre.plus(shift), widthPx, heightPx);
    }

    public Point toMm(Point px) {
        return new Point(centre.x() + (px.x() - widthPx / 2) / pxPerMm, centre.y() - (px.y() - heightPx / 2) / pxPerMm);
    }

    public Point toPx(Point mm) {
        return new Point(widthPx / 2 + (mm.x() - centre.x()) * pxPerMm, heightPx / 2 - (mm.y() - centre.y()) * pxPerMm);
    }

    /** From mm, y up, to pixels, y down. */
    public AffineTransform transform() {
        Point origin = toPx(new Point(0, 0));
        return new AffineTransform(pxPerMm, 0, 0, -pxPerMm, origin.x(), origin.y());
    }
}
