package weltwright.app.gui.assembled;

import com.formdev.flatlaf.util.UIScale;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Insets;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.app.gui.drawing.DimensionLinePainter;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.job.SheathDesign;
import weltwright.knife.CrossSection;
import weltwright.message.Messages;
import weltwright.sheath.planform.SectionDimensions;
import weltwright.sheath.planform.SectionLeather;
import weltwright.sheath.planform.SheathSection;
import weltwright.units.MeasureUnit;

/**
 * Shows the cross-section of the sewn sheath at the station, seen from the throat, with its dimensions. The edge is at
 * the left, the face on top.
 */
final class CrossSectionCanvas extends DrawingCanvas {
    private static final Messages TEXTS = Messages.of(CrossSectionCanvas.class);

    private static final int EXTENT_INTERVALS = 40;
    private static final Insets MARGINS = new Insets(24, 100, 72, 180); // in px, for the dimension lines; chosen by eye
    // Distances of the dimension lines from the section, chosen by eye.
    private static final float NEAR_PX = 26;
    private static final float FAR_PX = 96;

    private final StationModel station;
    private final DisplayUnit displayUnit;
    private Optional<SheathDesign> design = Optional.empty();
    private Optional<Rectangle2D> extent = Optional.empty();
    private Optional<SheathSection> section = Optional.empty();

    CrossSectionCanvas(StationModel station, DisplayUnit displayUnit) {
        this.station = station;
        this.displayUnit = displayUnit;
        setName("cross-section drawing");
        getAccessibleContext().setAccessibleName(TEXTS.text("cross-section-canvas.cross-section-the-sheath-cut"));
        station.bindKeys(this);
        station.addListener(this::update);
        displayUnit.addListener(this::update);
    }

    void setDesign(Optional<SheathDesign> newDesign) {
        design = newDesign;
        extent = newDesign.map(CrossSectionCanvas::largestExtent);
        update();
        contentChanged();
    }

    /** Returns a phrase for each dimension. */
    static List<String> describe(SectionDimensions dimensions, DisplayUnit displayUnit) {
        List<String> phrases = new ArrayList<>(List.of(
                TEXTS.text(
                        "cross-section-canvas.knife-thick-high",
                        displayUnit.format(dimensions.bladeMm()),
                        displayUnit.format(dimensions.heightMm())),
                TEXTS.text("cross-section-canvas.edge-to-stitch", displayUnit.format(dimensions.edgeToStitchMm())),
                TEXTS.text("cross-section-canvas.stitch-to-outer-edge", displayUnit.format(dimensions.marginMm()))));
        dimensions
                .weltMm()
                .ifPresent(mm -> phrases.add(TEXTS.text("cross-section-canvas.welt", displayUnit.format(mm))));
        phrases.addAll(List.of(
                TEXTS.text("cross-section-canvas.sewn-edge", displayUnit.format(dimensions.sewnMm())),
                TEXTS.text("cross-section-canvas.in-all-thick", displayUnit.format(dimensions.wholeMm())),
                TEXTS.text("cross-section-canvas.air-over-the-knife", displayUnit.format(dimensions.airMm())),
                TEXTS.text(
                        "cross-section-canvas.leather-of-the-face-inside", displayUnit.format(dimensions.faceMm()))));
        return phrases;
    }

    /** Returns the dimensions of the section; empty without a pattern. */
    Optional<SectionDimensions> dimensions() {
        return section.map(section ->
                SectionDimensions.of(section, SheathSectionPainter.outerEdges(design.orElseThrow(), section)[0]));
    }

    private void update() {
        section = design.map(design -> design.sections().at(station.xMm()));
        getAccessibleContext()
                .setAccessibleDescription(dimensions()
                        .map(dimensions -> String.join(", ", describe(dimensions, displayUnit)))
                        .orElse(TEXTS.text("cross-section-canvas.no-pattern-yet")));
        repaint();
    }

    @Override
    protected Optional<MeasureUnit> rulerUnit() {
        return Optional.of(displayUnit.unit());
    }

    @Override
    protected Optional<Rectangle2D> extent() {
        return extent;
    }

    @Override
    protected Insets margins() {
        return UIScale.scale(MARGINS);
    }

    /** Returns the union of the extents of all sections, so that all are shown at one scale. */
    private static Rectangle2D largestExtent(SheathDesign design) {
        double high = 0;
        double low = 0;
        for (int i = 0; i <= EXTENT_INTERVALS; i++) {
            double x = design.sections().fromMm()
                    + (design.sections().toMm() - design.sections().fromMm()) * i / EXTENT_INTERVALS;
            SheathSection section = design.sections().at(x);
            high = Math.max(
                    high, section.face().stream().mapToDouble(Point::y).max().orElse(0) + section.leatherMm());
            low = Math.min(
                    low, section.back().stream().mapToDouble(Point::y).min().orElse(0) - section.leatherMm());
        }
        var plan = design.plan().outline().lineString().getEnvelopeInternal();
        double overhang = foldOverhangMm(design.sections().at(design.sections().fromMm()));
        return new Rectangle2D.Double(plan.getMinY(), low, plan.getHeight() + overhang, high - low);
    }

    /** Returns how far the leather of a fold lies outside the plan's outline on the spine side. */
    private static double foldOverhangMm(SheathSection section) {
        return SectionLeather.folded(section) ? section.leatherMm() : 0;
    }

    @Override
    protected void paintDrawing(Graphics2D g, Viewport viewport) {
        section.ifPresent(section -> {
            double[] outer = SheathSectionPainter.outerEdges(design.orElseThrow(), section);
            new SheathSectionPainter(g, viewport).paintLayers(section, outer);
            paintDimensions(g, viewport, section, outer);
            paintNames(g, viewport, section, outer);
        });
    }

    private void paintDimensions(Graphics2D g, Viewport viewport, SheathSection section, double[] outer) {
        SectionDimensions dimensions = SectionDimensions.of(section, outer[0]);
        DimensionLinePainter painter = new DimensionLinePainter(g);
        double stitch = section.stitches().get(0);
        double half = dimensions.sewnMm() / 2;
        double low = section.back().stream().mapToDouble(Point::y).min().orElse(0) - section.leatherMm();
        double high = low + dimensions.wholeMm();
        double bottom = viewport.toPx(new Point(0, Math.min(low, -half))).y();
        double below = bottom + UIScale.scale(NEAR_PX);
        double[] places = {
            outer[0], stitch, section.knife().edgeMm(), section.knife().spineMm()
        };
        double[] from = {-half, -half, section.knifeLiftMm(), section.knifeLiftMm()};
        double[] between = {dimensions.marginMm(), dimensions.edgeToStitchMm(), dimensions.heightMm()};
        for (int i = 0; i < between.length; i++) {
            Point a = viewport.toPx(new Point(places[i], from[i]));
            Point b = viewport.toPx(new Point(places[i + 1], from[i + 1]));
            painter.paintHorizontal(a.x(), a.y(), b.x(), b.y(), below, displayUnit.format(between[i]));
        }
        Point sewnTop = viewport.toPx(new Point(outer[0], section.face().get(0).y() + section.leatherMm()));
        Point sewnBottom =
                viewport.toPx(new Point(outer[0], section.back().get(0).y() - section.leatherMm()));
        painter.paintVertical(
                sewnTop.y(),
                sewnTop.x(),
                sewnBottom.y(),
                sewnBottom.x(),
                sewnTop.x() - UIScale.scale(NEAR_PX),
                displayUnit.format(dimensions.sewnMm()));
        double right =
                viewport.toPx(new Point(outer[1] + foldOverhangMm(section), 0)).x();
        Point thickest = SectionDimensions.thickest(section);
        Point top = viewport.toPx(thickest);
        Point bottomOfKnife = viewport.toPx(new Point(thickest.x(), thickest.y() - dimensions.bladeMm()));
        painter.paintVertical(
                top.y(),
                top.x(),
                bottomOfKnife.y(),
                top.x(),
                right + UIScale.scale(NEAR_PX),
                displayUnit.format(dimensions.bladeMm()));
        Point highest = viewport.toPx(new Point(thickest.x(), high));
        Point lowest = viewport.toPx(new Point(thickest.x(), low));
        painter.paintVertical(
                highest.y(),
                highest.x(),
                lowest.y(),
                lowest.x(),
                right + UIScale.scale(FAR_PX),
                displayUnit.format(dimensions.wholeMm()));
    }

    /** Paints the names of the parts where they fit. */
    private static void paintNames(Graphics2D g, Viewport viewport, SheathSection section, double[] outer) {
        double knife = (section.knife().edgeMm() + section.knife().spineMm()) / 2;
        double leather = section.leatherMm();
        double stitch = section.stitches().get(0);
        paintName(
                g,
                viewport,
                TEXTS.text("cross-section-canvas.face"),
                new Point(knife, SectionDimensions.heightAt(section.face(), knife) + leather / 2),
                leather);
        paintName(
                g,
                viewport,
                section.rivetCover().isEmpty()
                        ? TEXTS.text("cross-section-canvas.back")
                        : TEXTS.text("cross-section-canvas.back-rivet-cover-on-it"),
                new Point(knife, SectionDimensions.heightAt(section.back(), knife) - leather / 2),
                leather);
        for (SheathSection.Layer layer : section.welt()) {
            double high = layer.toZ() - layer.fromZ();
            if (layer.fromY() <= stitch && stitch <= layer.toY()) {
                paintName(
                        g,
                        viewport,
                        TEXTS.text("cross-section-canvas.layer"),
                        new Point((stitch + layer.toY()) / 2, layer.fromZ() + high / 2),
                        high);
            }
        }
        boolean handle = section.knife().part() == CrossSection.Part.HANDLE;
        Point thickest = SectionDimensions.thickest(section);
        Point middle = new Point(handle ? knife : (knife + thickest.x()) / 2, section.knifeLiftMm());
        paintName(
                g,
                viewport,
                TEXTS.text(handle ? "cross-section-canvas.handle" : "cross-section-canvas.blade"),
                middle,
                section.knife().thicknessMm() / 2);
        Point edge = viewport.toPx(new Point(outer[0], section.face().get(0).y() + leather));
        g.setColor(ThemeColors.secondaryText());
        String name = TEXTS.text("cross-section-canvas.edge");
        g.drawString(name, (float) edge.x() - g.getFontMetrics().stringWidth(name) - 8, (float) edge.y() - 7);
    }

    private static void paintName(Graphics2D g, Viewport viewport, String name, Point middle, double highMm) {
        FontMetrics metrics = g.getFontMetrics();
        if (highMm * viewport.pxPerMm() >= metrics.getHeight()) {
            Point px = viewport.toPx(middle);
            g.setColor(ThemeColors.text());
            g.drawString(name, (float) (px.x() - metrics.stringWidth(name) / 2.0), (float)
                    (px.y() + (metrics.getAscent() - metrics.getDescent()) / 2.0));
        }
    }
}
