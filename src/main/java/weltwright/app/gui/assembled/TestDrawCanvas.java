package weltwright.app.gui.assembled;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.fit.DrawCheck;
import weltwright.fit.Retention;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.message.Messages;

/**
 * Shows the sheath from its face and the knife at its position in the draw; the knife can be dragged with the mouse.
 */
final class TestDrawCanvas extends DrawingCanvas {
    private static final Messages TEXTS = Messages.of(TestDrawCanvas.class);

    private static final double MARGIN_MM = 6;

    private final TestDrawModel model;
    private final DisplayUnit displayUnit;
    private double dragOffsetMm;

    TestDrawCanvas(TestDrawModel model, DisplayUnit displayUnit) {
        this.model = model;
        this.displayUnit = displayUnit;
        setName("test draw drawing");
        getAccessibleContext().setAccessibleName(TEXTS.text("test-draw-canvas.test-draw-the-knife-on"));
        bindKey("LEFT", () -> model.moveTo(model.drawnMm() + 1));
        bindKey("RIGHT", () -> model.moveTo(model.drawnMm() - 1));
        bindKey("shift LEFT", () -> model.moveTo(model.drawnMm() + 10));
        bindKey("shift RIGHT", () -> model.moveTo(model.drawnMm() - 10));
        bindKey("HOME", () -> model.moveTo(0));
        bindKey("END", () -> model.moveTo(model.travelMm()));
        model.addListener(this::repaint);
        displayUnit.addListener(this::repaint);
    }

    /** To be called when the model has another design. */
    void designChanged() {
        contentChanged();
    }

    /** Returns the bounds of the sheath and of the knife at rest and drawn. */
    @Override
    protected Optional<Rectangle2D> extent() {
        return model.design().map(design -> {
            Rectangle2D bounds = AnnotationPainter.path(design.plan().outline()).getBounds2D();
            for (double drawn : new double[] {0, model.travelMm()}) {
                RigidMotion motion = design.pattern().drawCheck().path().drawn(drawn);
                bounds = bounds.createUnion(AnnotationPainter.path(
                                design.knife().outline().sampled(2).map(motion::apply))
                        .getBounds2D());
            }
            return new Rectangle2D.Double(
                    bounds.getX() - MARGIN_MM,
                    bounds.getY() - MARGIN_MM,
                    bounds.getWidth() + 2 * MARGIN_MM,
                    bounds.getHeight() + 2 * MARGIN_MM);
        });
    }

    @Override
    protected void paintDrawing(Graphics2D g, Viewport viewport) {
        model.design().ifPresent(design -> {
            SheathPlanPainter painter = new SheathPlanPainter(g, viewport);
            RigidMotion motion = model.placement();
            DrawCheck check = design.pattern().drawCheck();
            painter.paintLeather(design.plan());
            painter.paintKnife(design.knife().outline(), motion);
            Retention grip = check.grip();
            grip.narrows().forEach(narrow -> painter.paintNarrowStretch(narrow, grip, motion));
            painter.paintStitches(design.plan());
            Messages texts = Messages.of(TestDrawCanvas.class).withUnit(displayUnit.unit());
            model.bindings()
                    .forEach(binding ->
                            painter.paintBinding(binding.leather(), texts.text("binds", binding.pushedMm())));
            model.nearestStep()
                    .ifPresent(step -> painter.paintClearance(
                            step.edge(),
                            step.stitch(),
                            displayUnit.format(step.edgeToStitchMm()),
                            step.edgeToStitchMm() >= DrawCheck.SAFE_EDGE_TO_STITCH_MM));
            grip.narrows().forEach(narrow -> painter.addNarrowLabel(narrow, motion, describe(narrow, grip)));
            painter.paintLabels();
        });
    }

    private String describe(Retention.Narrow narrow, Retention grip) {
        String by = displayUnit.format(narrow.byMm());
        return grip.isOpen(narrow)
                ? TEXTS.text("test-draw-canvas.kept-open-by", by)
                : grip.isGripped(narrow)
                        ? TEXTS.text("test-draw-canvas.gripped-gives", by)
                        : TEXTS.text("test-draw-canvas.gives", by);
    }

    @Override
    protected boolean beginDrag(Point mm, double hitRadiusMm) {
        dragOffsetMm = model.drawnMm() + mm.x();
        return isDraggableAt(mm, hitRadiusMm);
    }

    @Override
    protected void dragTo(Point mm) {
        model.moveTo(dragOffsetMm - mm.x());
    }

    @Override
    protected boolean isDraggableAt(Point mm, double hitRadiusMm) {
        return model.design()
                .filter(design -> AnnotationPainter.path(
                                design.knife().outline().sampled(1).map(model.placement()::apply))
                        .contains(mm.x(), mm.y()))
                .isPresent();
    }
}
