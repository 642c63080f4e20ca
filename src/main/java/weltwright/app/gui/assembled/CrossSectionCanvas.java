package weltwright.app.gui.assembled;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Insets;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.DimensionLinePainter;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.job.SheathDesign;
import weltwright.knife.CrossSection;
import weltwright.sheath.planform.SectionDimensions;
import weltwright.sheath.planform.SectionLeather;
import weltwright.sheath.planform.SheathSection;

/**
 * The sewn sheath cut through at the station, seen from its throat: blade, welt, leather, stitch and air, with their
 * sizes. The edge lies at the left, the face on top.
 */
final class CrossSectionCanvas extends DrawingCanvas {
    private static final int STATIONS_LOOKED_AT = 40;
    private static final Insets SIZES = new Insets(24, 100, 72, 180); // what they take round the section, in pixels
    private static final double NEAR_PX = 26;
    private static final double FAR_PX = 96;
    private static final float[] DASHES = {3, 3};

    private final StationModel station;
    private final DisplayUnit ruler;
    private Optional<SheathDesign> fitted = Optional.empty();
    private Optional<Rectangle2D> extent = Optional.empty();
    private Optional<SheathSection> cut = Optional.empty();

    CrossSectionCanvas(StationModel station, DisplayUnit ruler) {
        this.station = station;
        this.ruler = ruler;
        setName("cross-section drawing");
        getAccessibleContext().setAccessibleName("Cross-section: the sheath cut through");
        station.keys(this);
        station.watch(this::look);
        ruler.watch(this::look);
    }

    void show(Optional<SheathDesign> now) {
        fitted = now;
        extent = now.map(CrossSectionCanvas::room);
        look();
        changed();
    }

    /** The sizes in words, in the unit that the user chose, each in a few. */
    static List<String> words(SectionDimensions sizes, DisplayUnit ruler) {
        List<String> words = new ArrayList<>(List.of(
                "knife " + ruler.said(sizes.bladeMm()) + " thick, " + ruler.said(sizes.heightMm()) + " high",
                "edge to stitch " + ruler.said(sizes.edgeToStitchMm()),
                "stitch to outer edge " + ruler.said(sizes.marginMm())));
        sizes.weltMm().ifPresent(mm -> words.add("welt " + ruler.said(mm)));
        words.addAll(List.of(
                "sewn edge " + ruler.said(sizes.sewnMm()),
                "in all " + ruler.said(sizes.wholeMm()) + " thick",
                "air over the knife " + ruler.said(sizes.airMm()),
                "leather of the face " + ruler.said(sizes.faceMm()) + " inside"));
        return words;
    }

    /** What is seen, and its outer edge; empty where there is no pattern. */
    Optional<SectionDimensions> sizes() {
        return cut.map(section -> SectionDimensions.of(section, outer(section)[0]));
    }

    private void look() {
        cut = fitted.map(f -> f.sections().at(station.xMm()));
        getAccessibleContext()
                .setAccessibleDescription(sizes().map(sizes -> String.join(", ", words(sizes, ruler)))
                        .orElse("No pattern yet"));
        repaint();
    }

    @Override
    protected Optional<Rectangle2D> extent() {
        return extent;
    }

    @Override
    protected Insets free() {
        return UIScale.scale(SIZES);
    }

    /** As much as any section takes, so that one scale does for all of them. */
    private static Rectangle2D room(SheathDesign f) {
        double high = 0;
        double low = 0;
        for (int i = 0; i <= STATIONS_LOOKED_AT; i++) {
            double x =
                    f.sections().fromMm() + (f.sections().toMm() - f.sections().fromMm()) * i / STATIONS_LOOKED_AT;
            SheathSection section = f.sections().at(x);
            high = Math.max(
                    high, section.face().stream().mapToDouble(Point::y).max().orElse(0) + section.leatherMm());
            low = Math.min(
                    low, section.back().stream().mapToDouble(Point::y).min().orElse(0) - section.leatherMm());
        }
        var plan = f.plan().outline().lineString().getEnvelopeInternal();
        double beyond = beyondMm(f.sections().at(f.sections().fromMm()));
        return new Rectangle2D.Double(plan.getMinY(), low, plan.getHeight() + beyond, high - low);
    }

    /** How far leather goes on past the outline on the spine's side: that of a fold lies outside it. */
    private static double beyondMm(SheathSection section) {
        return SectionLeather.folded(section) ? section.leatherMm() : 0;
    }

    /** y of the outer edge on the edge's side and on the spine's side. */
    private double[] outer(SheathSection section) {
        double[] ys = fitted.orElseThrow().plan().outline().crossings(section.xMm());
        double first = section.stitches().get(0);
        double last = section.stitches().get(section.stitches().size() - 1);
        return ys.length == 0 ? new double[] {first, last} : new double[] {ys[0], ys[ys.length - 1]};
    }

    @Override
    protected void paint(Graphics2D g, Viewport at) {
        cut.ifPresent(section -> {
            double[] outer = outer(section);
            layers(g, at, section, outer);
            sizes(g, at, section, outer);
            names(g, at, section, outer);
        });
    }

    private static void layers(Graphics2D g, Viewport at, SheathSection section, double[] outer) {
        AffineTransform toPx = at.transform();
        List<Polyline> leather = SectionLeather.of(section, outer[0], outer[1]);
        fill(g, toPx, inside(section), ThemeColors.cavity(), null);
        section.welt()
                .forEach(layer -> fill(
                        g,
                        toPx,
                        new Rectangle2D.Double(
                                layer.fromY(), layer.fromZ(), layer.toY() - layer.fromY(), layer.toZ() - layer.fromZ()),
                        ThemeColors.welt(),
                        ThemeColors.cutLine()));
        leather.forEach(
                chain -> fill(g, toPx, AnnotationPainter.path(chain), ThemeColors.leather(), ThemeColors.cutLine()));
        Path2D knife = AnnotationPainter.path(Polyline.closed(section.knife().boundary()));
        knife.transform(AffineTransform.getTranslateInstance(0, section.knifeLiftMm()));
        g.setColor(ThemeColors.markLine());
        g.setStroke(new BasicStroke(1, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, DASHES, 0));
        g.draw(toPx.createTransformedShape(AnnotationPainter.path(Polyline.closed(section.room()))));
        fill(g, toPx, knife, ThemeColors.steel(), ThemeColors.knifeLine());
        for (double stitch : section.stitches()) {
            stitch(g, at, stitch, section);
        }
    }

    /** Between face and back: what is air, but for what is painted over it. */
    private static Shape inside(SheathSection section) {
        Path2D inside = new Path2D.Double();
        List<Point> face = section.face();
        inside.moveTo(face.get(0).x(), face.get(0).y());
        face.stream().skip(1).forEach(p -> inside.lineTo(p.x(), p.y()));
        for (int i = section.back().size() - 1; i >= 0; i--) {
            inside.lineTo(section.back().get(i).x(), section.back().get(i).y());
        }
        inside.closePath();
        return inside;
    }

    /** The thread through all layers, and a little of it lying on either side. */
    private static void stitch(Graphics2D g, Viewport at, double y, SheathSection section) {
        int end = y == section.stitches().get(0) ? 0 : section.face().size() - 1;
        double top = section.face().get(end).y() + section.leatherMm();
        double bottom =
                section.back().get(end == 0 ? 0 : section.back().size() - 1).y() - section.leatherMm();
        Point upper = at.toPx(new Point(y, top));
        Point lower = at.toPx(new Point(y, bottom));
        g.setColor(ThemeColors.thread());
        g.setStroke(AnnotationPainter.pen(2.6f));
        g.draw(new Line2D.Double(upper.x(), upper.y(), lower.x(), lower.y()));
        for (Point p : List.of(upper, lower)) {
            g.draw(new Line2D.Double(p.x() - 5, p.y(), p.x() + 5, p.y()));
        }
    }

    private void sizes(Graphics2D g, Viewport at, SheathSection section, double[] outer) {
        SectionDimensions sizes = SectionDimensions.of(section, outer[0]);
        DimensionLinePainter ink = new DimensionLinePainter(g);
        double stitch = section.stitches().get(0);
        double half = sizes.sewnMm() / 2;
        double low = section.back().stream().mapToDouble(Point::y).min().orElse(0) - section.leatherMm();
        double high = low + sizes.wholeMm();
        double bottom = at.toPx(new Point(0, Math.min(low, -half))).y();
        double below = bottom + NEAR_PX;
        double[] places = {
            outer[0], stitch, section.knife().edgeMm(), section.knife().spineMm()
        };
        double[] from = {-half, -half, section.knifeLiftMm(), section.knifeLiftMm()};
        double[] between = {sizes.marginMm(), sizes.edgeToStitchMm(), sizes.heightMm()};
        for (int i = 0; i < between.length; i++) {
            Point a = at.toPx(new Point(places[i], from[i]));
            Point b = at.toPx(new Point(places[i + 1], from[i + 1]));
            ink.across(a.x(), a.y(), b.x(), b.y(), below, ruler.said(between[i]));
        }
        Point sewnTop = at.toPx(new Point(outer[0], section.face().get(0).y() + section.leatherMm()));
        Point sewnBottom = at.toPx(new Point(outer[0], section.back().get(0).y() - section.leatherMm()));
        ink.upright(
                sewnTop.y(),
                sewnTop.x(),
                sewnBottom.y(),
                sewnBottom.x(),
                sewnTop.x() - NEAR_PX,
                ruler.said(sizes.sewnMm()));
        double right = at.toPx(new Point(outer[1] + beyondMm(section), 0)).x();
        Point thickest = SectionDimensions.thickest(section);
        Point top = at.toPx(thickest);
        Point bottomOfKnife = at.toPx(new Point(thickest.x(), thickest.y() - sizes.bladeMm()));
        ink.upright(top.y(), top.x(), bottomOfKnife.y(), top.x(), right + NEAR_PX, ruler.said(sizes.bladeMm()));
        Point highest = at.toPx(new Point(thickest.x(), high));
        Point lowest = at.toPx(new Point(thickest.x(), low));
        ink.upright(highest.y(), highest.x(), lowest.y(), lowest.x(), right + FAR_PX, ruler.said(sizes.wholeMm()));
    }

    /** What is what, written where it finds room. */
    private static void names(Graphics2D g, Viewport at, SheathSection section, double[] outer) {
        double knife = (section.knife().edgeMm() + section.knife().spineMm()) / 2;
        double leather = section.leatherMm();
        double stitch = section.stitches().get(0);
        name(g, at, "face", new Point(knife, SectionDimensions.heightAt(section.face(), knife) + leather / 2), leather);
        name(g, at, "back", new Point(knife, SectionDimensions.heightAt(section.back(), knife) - leather / 2), leather);
        for (SheathSection.Layer layer : section.welt()) {
            double high = layer.toZ() - layer.fromZ();
            if (layer.fromY() <= stitch && stitch <= layer.toY()) {
                name(g, at, "welt", new Point((stitch + layer.toY()) / 2, layer.fromZ() + high / 2), high);
            }
        }
        boolean handle = section.knife().part() == CrossSection.Part.HANDLE;
        Point thickest = SectionDimensions.thickest(section);
        Point middle = new Point(handle ? knife : (knife + thickest.x()) / 2, section.knifeLiftMm());
        name(g, at, handle ? "handle" : "blade", middle, section.knife().thicknessMm() / 2);
        Point edge = at.toPx(new Point(outer[0], section.face().get(0).y() + leather));
        g.setColor(ThemeColors.secondaryText());
        g.drawString("edge", (float) edge.x() - g.getFontMetrics().stringWidth("edge") - 8, (float) edge.y() - 7);
    }

    private static void name(Graphics2D g, Viewport at, String name, Point middle, double highMm) {
        FontMetrics metrics = g.getFontMetrics();
        if (highMm * at.pxPerMm() >= metrics.getHeight()) {
            Point px = at.toPx(middle);
            g.setColor(ThemeColors.text());
            g.drawString(name, (float) (px.x() - metrics.stringWidth(name) / 2.0), (float)
                    (px.y() + (metrics.getAscent() - metrics.getDescent()) / 2.0));
        }
    }

    private static void fill(Graphics2D g, AffineTransform toPx, Shape mm, Color inside, @Nullable Color line) {
        Shape px = toPx.createTransformedShape(mm);
        g.setColor(inside);
        g.fill(px);
        if (line != null) {
            g.setColor(line);
            g.setStroke(AnnotationPainter.pen(1));
            g.draw(px);
        }
    }
}
