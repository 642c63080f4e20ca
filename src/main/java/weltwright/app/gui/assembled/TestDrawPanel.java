package weltwright.app.gui.assembled;

import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.JSlider;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.theme.ToolIcons;
import weltwright.app.gui.widget.MnemonicText;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.fit.DrawCheck;
import weltwright.fit.Retention;
import weltwright.job.SheathDesign;
import weltwright.message.Messages;

/**
 * The test draw: an animation of the knife drawn from its sheath, with a slider and a chart of the edge's clearance.
 */
public final class TestDrawPanel extends JPanel {
    private static final Messages TEXTS = Messages.of(TestDrawPanel.class);

    private static final int TICK_MS = 20;
    /** Of the whole draw; chosen by eye. */
    private static final double DURATION_S = 3;

    private static final int SLIDER_PER_MM = 10;

    private final TestDrawModel model = new TestDrawModel();
    private final DisplayUnit displayUnit;
    private final TestDrawCanvas canvas;
    private static final MnemonicText DRAW = MnemonicText.of(TEXTS.text("test-draw-panel.draw"));

    private final JButton playButton = new JButton();
    private final JSlider slider = new JSlider(0, 1, 0);
    private final WrappedText description = new WrappedText(ThemeColors::text);
    private final Timer timer = new Timer(TICK_MS, e -> advance());
    private long lastNs;
    private boolean updating;

    public TestDrawPanel(DisplayUnit displayUnit) {
        super(new WrappedTextLayout("insets 0, fill, wrap 1, gap 0, hidemode 3", "[grow,fill]"));
        this.displayUnit = displayUnit;
        canvas = new TestDrawCanvas(model, displayUnit);
        playButton.setName("play");
        playButton.setMnemonic(DRAW.mnemonic());
        playButton.addActionListener(e -> setPlaying(!timer.isRunning()));
        slider.setName("drawn");
        slider.getAccessibleContext().setAccessibleName(TEXTS.text("test-draw-panel.how-far-the-knife-is"));
        slider.addChangeListener(e -> {
            if (!updating) {
                setPlaying(false);
                model.moveTo((double) slider.getValue() / SLIDER_PER_MM);
            }
        });
        JPanel row = new JPanel(new MigLayout("insets 4 12 4 12, gap 10", "[][grow,fill]"));
        row.add(playButton, "w 112!");
        row.add(slider, "wmin 0");
        description.setName("draw told");
        add(canvas, "wmin 0, hmin 0, push, grow");
        add(new EdgeClearanceChart(model, displayUnit), "wmin 0, gaptop 8, gapleft 70");
        add(row, "wmin 0");
        add(description, "wmin 0, gapleft 12, gapright 12, gapbottom 8, hmin 36");
        model.addListener(this::update);
        displayUnit.addListener(this::update);
        addHierarchyListener(e -> {
            if (!isShowing()) {
                setPlaying(false);
            }
        });
        setPlaying(false);
    }

    public void setDesign(Optional<SheathDesign> design) {
        model.setDesign(design);
        canvas.designChanged();
    }

    public TestDrawCanvas canvas() {
        return canvas;
    }

    TestDrawModel model() {
        return model;
    }

    private void setPlaying(boolean on) {
        if (on) {
            if (model.drawnMm() >= model.travelMm()) {
                model.moveTo(0);
            }
            lastNs = System.nanoTime();
            timer.start();
        } else {
            timer.stop();
        }
        playButton.setText(on ? TEXTS.text("test-draw-panel.hold") : DRAW.text());
        playButton.setIcon(ToolIcons.icon(on ? "pause" : "play"));
        playButton.setToolTipText(
                on ? TEXTS.text("test-draw-panel.stop-here") : TEXTS.text("test-draw-panel.see-the-knife-come-out"));
    }

    private void advance() {
        long now = System.nanoTime();
        model.moveTo(model.drawnMm() + model.travelMm() * (now - lastNs) / 1e9 / DURATION_S);
        lastNs = now;
        if (model.drawnMm() >= model.travelMm()) {
            setPlaying(false);
        }
    }

    private void update() {
        updating = true;
        slider.setMaximum((int) Math.round(model.travelMm() * SLIDER_PER_MM));
        slider.setValue((int) Math.round(model.drawnMm() * SLIDER_PER_MM));
        updating = false;
        description.showText(model.check().map(this::describe).orElse(""));
    }

    private String describe(DrawCheck check) {
        String now = model.nearestStep()
                .map(step -> TEXTS.text("test-draw-panel.edge-to-stitch", displayUnit.format(step.edgeToStitchMm())))
                .orElse(TEXTS.text("test-draw-panel.the-edge-is-out"));
        return check.stitchesAreSafe()
                ? TEXTS.text(
                        "test-draw-panel.drawn-least-during-the-draw",
                        displayUnit.format(model.drawnMm()),
                        now,
                        displayUnit.format(check.leastEdgeToStitchMm()),
                        describe(check.grip()))
                : TEXTS.text(
                        "test-draw-panel.drawn-least-during-the-draw-too-little",
                        displayUnit.format(model.drawnMm()),
                        now,
                        displayUnit.format(check.leastEdgeToStitchMm()),
                        describe(check.grip()));
    }

    private String describe(Retention grip) {
        return switch (grip.hold()) {
            case FORM ->
                TEXTS.text(
                        "test-draw-panel.formed-leather-grips-the-handle",
                        displayUnit.format(grip.gripMm()),
                        displayUnit.format(grip.pushedOpenMm()));
            case FRICTION ->
                TEXTS.text("test-draw-panel.leather-lies-against-the-handle", displayUnit.format(grip.gripMm()));
            case NONE -> TEXTS.text("test-draw-panel.throat-wider-than-the-knife", displayUnit.format(grip.throatMm()));
            case BLADE_ALONE -> TEXTS.text("test-draw-panel.the-sheath-holds-the-blade");
        };
    }
}
