package weltwright.app.gui.drawing;

import java.awt.Insets;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import weltwright.geometry.Point;

/**
 * The part of a drawing in mm, y up, that a component shows in px, y down.
 *
 * @param pxPerMm zoom
 * @param centre the point in mm at the middle of the component
 * @param widthPx of the component
 * @param heightPx of the component
 */
public record Viewport(double pxPerMm, Point centre, double widthPx, double heightPx) {
    // Limits of the zoom, chosen by eye.
    private static final double MIN_PX_PER_MM = 0.2;
    private static final double MAX_PX_PER_MM = 200;

    public Viewport {
        pxPerMm = Math.max(MIN_PX_PER_MM, Math.min(MAX_PX_PER_MM, pxPerMm));
    }

    /** Returns the viewport that shows all of {@code extent} (mm) as large as the margins (px) allow. */
    public static Viewport fit(Rectangle2D extent, double widthPx, double heightPx, Insets margins) {
        double horizontalScale =
                Math.max(1, widthPx - margins.left - margins.right) / Math.max(1e-3, extent.getWidth());
        double verticalScale =
                Math.max(1, heightPx - margins.top - margins.bottom) / Math.max(1e-3, extent.getHeight());
        Point centre = new Point(extent.getCenterX(), extent.getCenterY());
        return new Viewport(Math.min(horizontalScale, verticalScale), centre, widthPx, heightPx)
                .panned((margins.left - margins.right) / 2.0, (margins.top - margins.bottom) / 2.0);
    }

    Viewport withSize(double newWidthPx, double newHeightPx) {
        return new Viewport(pxPerMm, centre, newWidthPx, newHeightPx);
    }

    /** Returns this viewport zoomed about a pixel: the point in mm under it stays there. */
    Viewport zoomed(double factor, Point aboutPx) {
        Point anchor = toMm(aboutPx);
        Viewport zoomed = new Viewport(pxPerMm * factor, centre, widthPx, heightPx);
        return new Viewport(zoomed.pxPerMm, centre.plus(anchor.minus(zoomed.toMm(aboutPx))), widthPx, heightPx);
    }

    /** Returns the viewport with the drawing moved by px to the right and down. */
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

    /** Returns the transform from mm to px. */
    public AffineTransform transform() {
        Point origin = toPx(new Point(0, 0));
        return new AffineTransform(pxPerMm, 0, 0, -pxPerMm, origin.x(), origin.y());
    }
}
