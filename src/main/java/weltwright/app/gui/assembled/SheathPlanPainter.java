package weltwright.app.gui.assembled;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.ArrayList;
import java.util.List;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.fit.DrawCheck;
import weltwright.fit.Retention;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.geometry.curve.Outline;
import weltwright.sheath.planform.SewnPlanView;

/** Paints a sewn sheath seen from its face, with transparent leather, and the knife in it or drawn from it. */
public final class SheathPlanPainter {
    // Chosen by eye.
    private static final double STEP_MM = 0.5;
    private static final double STITCH_MM = 1.2;
    private static final double MIN_STITCH_PX = 1.5;
    private static final int STEEL_ALPHA = 190;
    private static final int MARK_ALPHA = 60;

    /** Where the loose end of the strap round the handle and its snap lie, as shares of the handle's width. */
    private static final double STRAP_END = 0.9;

    private static final double SNAP_PLACE = 0.7; // a fifth off the middle, as HandleStrapDraft places it

    private final Graphics2D g;
    private final Viewport viewport;
    private final AffineTransform toPx;
    private final List<Label> labels = new ArrayList<>();
    private Rectangle2D leatherPx = new Rectangle2D.Double();

    /** A text and its bounds in px. */
    private record Label(String text, Rectangle2D plate) {}

    public SheathPlanPainter(Graphics2D g, Viewport viewport) {
        this.g = g;
        this.viewport = viewport;
        toPx = viewport.transform();
    }

    public void paintLeather(SewnPlanView plan) {
        Shape outline = AnnotationPainter.path(plan.outline());
        leatherPx = toPx.createTransformedShape(outline).getBounds2D();
        fillLeather(outline);
    }

    public void paintStitches(SewnPlanView plan) {
        g.setColor(ThemeColors.hole());
        double r = Math.max(MIN_STITCH_PX, STITCH_MM / 2 * viewport.pxPerMm());
        for (Point stitch : plan.stitches()) {
            Point px = viewport.toPx(stitch);
            g.fill(new Ellipse2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r));
        }
    }

    public void paintKnife(Outline outline, RigidMotion motion) {
        Shape knife = toPx.createTransformedShape(
                AnnotationPainter.path(outline.sampled(STEP_MM).map(motion::apply)));
        Color steel = ThemeColors.steel();
        g.setColor(new Color(steel.getRed(), steel.getGreen(), steel.getBlue(), STEEL_ALPHA));
        g.fill(knife);
        g.setColor(ThemeColors.knifeLine());
        g.setStroke(AnnotationPainter.roundStroke(1.4f));
        g.draw(knife);
    }

    /**
     * Paints the strap round the handle, closed.
     *
     * @param xMm of its middle
     * @param fromMm y of the handle's side at which it is fixed
     * @param toMm y of the handle's other side, near which its loose end lies
     */
    public void paintHandleStrap(double xMm, double widthMm, double fromMm, double toMm) {
        double half = widthMm / 2;
        double endMm = fromMm + STRAP_END * (toMm - fromMm);
        fillLeather(new Rectangle2D.Double(xMm - half, Math.min(fromMm, toMm), widthMm, Math.abs(toMm - fromMm)));
        fillLeather(new RoundRectangle2D.Double(
                xMm - half, Math.min(fromMm, endMm), widthMm, Math.abs(endMm - fromMm), half, half));
        Point snap = viewport.toPx(new Point(xMm, fromMm + SNAP_PLACE * (toMm - fromMm)));
        double r = half / 2 * viewport.pxPerMm();
        Shape cap = new Ellipse2D.Double(snap.x() - r, snap.y() - r, 2 * r, 2 * r);
        g.setColor(ThemeColors.steel());
        g.fill(cap);
        g.setColor(ThemeColors.cutLine());
        g.draw(cap);
    }

    private void fillLeather(Shape mm) {
        Shape px = toPx.createTransformedShape(mm);
        g.setColor(ThemeColors.leather());
        g.fill(px);
        g.setColor(ThemeColors.cutLine());
        g.setStroke(AnnotationPainter.roundStroke(1.6f));
        g.draw(px);
    }

    /** Paints a stretch where the knife is narrower than what must pass, in a colour for gripped, open or neither. */
    void paintNarrowStretch(Retention.Narrow narrow, Retention grip, RigidMotion motion) {
        g.setColor(
                grip.isGripped(narrow)
                        ? ThemeColors.success()
                        : grip.isOpen(narrow) ? ThemeColors.warning() : ThemeColors.secondaryText());
        g.setStroke(AnnotationPainter.roundStroke(4));
        for (Retention.NarrowSide side : narrow.sides()) {
            g.draw(toPx.createTransformedShape(
                    AnnotationPainter.path(side.outline().map(motion::apply))));
        }
    }

    /** Paints leather that is pushed open now, and adds a label by how much. */
    void paintBinding(Polyline leather, String text) {
        AnnotationPainter.paintWithHalo(
                g, toPx.createTransformedShape(AnnotationPainter.path(leather)), 5, ThemeColors.warning());
        Point middle = viewport.toPx(leather.at(leather.lengthMm() / 2));
        addLabelBeyondLeather(text, middle, middle.y() > viewport.heightPx() / 2);
    }

    /** Adds the label of such a stretch beyond the leather. */
    void addNarrowLabel(Retention.Narrow narrow, RigidMotion motion, String text) {
        narrow.sides().stream().findFirst().ifPresent(side -> {
            Polyline outline = side.outline();
            Point middle = viewport.toPx(motion.apply(outline.at(outline.lengthMm() / 2)));
            addLabelBeyondLeather(text, middle, side.side() == DrawCheck.Side.EDGE);
        });
    }

    /** Adds a label above or below the leather, and paints a line to the place that it tells of. */
    private void addLabelBeyondLeather(String text, Point place, boolean below) {
        double gap = UIScale.scale(10f);
        double labelHeight = g.getFontMetrics().getHeight();
        double y = below
                ? Math.max(leatherPx.getMaxY(), place.y()) + gap
                : Math.min(leatherPx.getMinY(), place.y()) - gap - labelHeight;
        Rectangle2D plate = addLabel(text, place.x() - g.getFontMetrics().stringWidth(text) / 2.0, y, below ? 1 : -1);
        g.setColor(ThemeColors.text());
        g.setStroke(AnnotationPainter.roundStroke(1));
        g.draw(new Line2D.Double(place.x(), place.y(), place.x(), below ? plate.getMinY() : plate.getMaxY()));
    }

    /**
     * Adds a label, within the drawing's width and moved up or down by its height until it overlaps none of those
     * before.
     *
     * @param down 1 to move down, -1 to move up
     * @return its bounds in px
     */
    private Rectangle2D addLabel(String text, double x, double y, int down) {
        double height = g.getFontMetrics().getHeight() + 6;
        double width = g.getFontMetrics().stringWidth(text) + 22;
        double left = Math.max(0, Math.min(x - 6, viewport.widthPx() - width));
        Rectangle2D plate = new Rectangle2D.Double(left, y, width, height);
        while (labels.stream().map(Label::plate).anyMatch(plate::intersects)) {
            plate.setRect(plate.getX(), plate.getY() + down * height, plate.getWidth(), height);
        }
        labels.add(new Label(text, plate));
        return plate;
    }

    /** Paints the labels, over all lines that lead to them. */
    void paintLabels() {
        labels.forEach(label -> AnnotationPainter.paintLabel(
                g, label.text(), label.plate().getX() + 6, label.plate().getY()));
    }

    /** Paints the distance from the edge to the nearest stitch, and adds a label. */
    void paintClearance(Point edge, Point stitch, String text, boolean safe) {
        Point a = viewport.toPx(edge);
        Point b = viewport.toPx(stitch);
        g.setColor(safe ? ThemeColors.text() : ThemeColors.error());
        g.setStroke(AnnotationPainter.roundStroke(2));
        g.draw(new Line2D.Double(a.x(), a.y(), b.x(), b.y()));
        for (Point end : new Point[] {a, b}) {
            g.fill(new Ellipse2D.Double(end.x() - 3, end.y() - 3, 6, 6));
        }
        addLabel(text, b.x() + 8, b.y() + 6, 1);
    }

    /** Paints a band across the sheath over a stretch of the knife; a short one gets a least width. */
    void paintMarkedStretch(Rectangle2D sheath, double fromMm, double toMm) {
        double least = UIScale.scale(8f);
        double left = viewport.toPx(new Point(fromMm, 0)).x();
        double right = viewport.toPx(new Point(toMm, 0)).x();
        double wide = Math.max(least, right - left);
        double top = viewport.toPx(new Point(0, sheath.getMaxY())).y() - least / 2;
        double bottom = viewport.toPx(new Point(0, sheath.getMinY())).y() + least / 2;
        Rectangle2D band = new Rectangle2D.Double((left + right - wide) / 2, top, wide, bottom - top);
        Color color = ThemeColors.uncertainOverlay();
        g.setColor(new Color(color.getRed(), color.getGreen(), color.getBlue(), MARK_ALPHA));
        g.fill(band);
        g.setColor(color);
        g.setStroke(AnnotationPainter.roundStroke(2));
        g.draw(band);
    }

    /** Paints the section line at a station, with handles at both ends. */
    void paintStation(Rectangle2D sheath, double xMm, String text) {
        Point top = viewport.toPx(new Point(xMm, sheath.getMaxY()));
        Point bottom = viewport.toPx(new Point(xMm, sheath.getMinY()));
        double beyond = UIScale.scale(12f);
        g.setColor(ThemeColors.error());
        g.setStroke(AnnotationPainter.roundStroke(2));
        g.draw(new Line2D.Double(top.x(), top.y() - beyond, bottom.x(), bottom.y() + beyond));
        double r = UIScale.scale(5f);
        g.fill(new Ellipse2D.Double(top.x() - r, top.y() - beyond - r, 2 * r, 2 * r));
        g.fill(new Ellipse2D.Double(bottom.x() - r, bottom.y() + beyond - r, 2 * r, 2 * r));
        AnnotationPainter.paintLabel(g, text, top.x() + 10, top.y() - beyond - 10);
    }
}
