package weltwright.app.gui.assembled;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.fit.Retention;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.job.SheathDesign;
import weltwright.message.Messages;

/** Shows the sheath from its face with the knife in it, and the section line, which the user moves by mouse or keys. */
public final class StationCanvas extends DrawingCanvas {
    private static final Messages TEXTS = Messages.of(StationCanvas.class);

    private static final RigidMotion AT_REST = new RigidMotion(0, new Point(0, 0));
    private static final double MARGIN_MM = 6;

    private final StationModel station;
    private final DisplayUnit displayUnit;
    private Optional<SheathDesign> design = Optional.empty();
    private Optional<Stretch> marked = Optional.empty();

    StationCanvas(StationModel station, DisplayUnit displayUnit) {
        this.station = station;
        this.displayUnit = displayUnit;
        setName("station drawing");
        getAccessibleContext().setAccessibleName(TEXTS.text("station-canvas.where-the-sheath-is-cut"));
        station.bindKeys(this);
        station.addListener(this::repaint);
        displayUnit.addListener(this::repaint);
    }

    /** Marks a stretch along the knife until the design changes. */
    void mark(double fromMm, double toMm) {
        marked = Optional.of(new Stretch(fromMm, toMm));
        repaint();
    }

    private record Stretch(double fromMm, double toMm) {}

    void setDesign(Optional<SheathDesign> newDesign) {
        if (!newDesign.equals(design)) {
            marked = Optional.empty();
        }
        design = newDesign;
        contentChanged();
    }

    @Override
    protected Optional<Rectangle2D> extent() {
        return sheathBounds()
                .map(box -> new Rectangle2D.Double(
                        box.getX() - MARGIN_MM,
                        box.getY() - MARGIN_MM,
                        box.getWidth() + 2 * MARGIN_MM,
                        box.getHeight() + 2 * MARGIN_MM));
    }

    @Override
    protected void paintDrawing(Graphics2D g, Viewport viewport) {
        design.ifPresent(design -> {
            SheathPlanPainter painter = new SheathPlanPainter(g, viewport);
            painter.paintLeather(design.plan());
            painter.paintKnife(design.knife().outline(), AT_REST);
            Retention grip = design.pattern().drawCheck().grip();
            grip.narrows().forEach(narrow -> painter.paintNarrowStretch(narrow, grip, AT_REST));
            painter.paintStitches(design.plan());
            marked.ifPresent(stretch ->
                    painter.paintMarkedStretch(sheathBounds().orElseThrow(), stretch.fromMm(), stretch.toMm()));
            painter.paintStation(
                    sheathBounds().orElseThrow(),
                    station.xMm(),
                    TEXTS.text("station-canvas.from-the-throat", displayUnit.format(station.fromThroatMm())));
        });
    }

    /** Moves the section line to any point over the sheath. */
    @Override
    protected boolean beginDrag(Point mm, double hitRadiusMm) {
        boolean there = isDraggableAt(mm, hitRadiusMm);
        if (there) {
            station.moveTo(mm.x());
        }
        return there;
    }

    @Override
    protected void dragTo(Point mm) {
        station.moveTo(mm.x());
    }

    @Override
    protected boolean isDraggableAt(Point mm, double hitRadiusMm) {
        return sheathBounds()
                .filter(box -> mm.x() > box.getMinX() - hitRadiusMm
                        && mm.x() < box.getMaxX() + hitRadiusMm
                        && mm.y() > box.getMinY() - 2 * hitRadiusMm
                        && mm.y() < box.getMaxY() + 2 * hitRadiusMm)
                .isPresent();
    }

    private Optional<Rectangle2D> sheathBounds() {
        return design.map(
                design -> AnnotationPainter.path(design.plan().outline()).getBounds2D());
    }
}
