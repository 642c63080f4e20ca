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
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.fit.DrawCheck;
import weltwright.fit.Retention;
import weltwright.job.SheathDesign;

/** The knife drawn from its sheath before any leather is cut: to be played, held, and gone through by hand. */
public final class TestDrawPanel extends JPanel {
    private static final int TICK_MS = 20;
    private static final double SECONDS = 3;
    private static final int SLIDER_PER_MM = 10;

    private final TestDrawModel draw = new TestDrawModel();
    private final DisplayUnit ruler;
    private final TestDrawCanvas view;
    private final JButton play = new JButton();
    private final JSlider slider = new JSlider(0, 1, 0);
    private final WrappedText told = new WrappedText(ThemeColors::text);
    private final Timer clock = new Timer(TICK_MS, e -> tick());
    private long lastNs;
    private boolean showing;

    public TestDrawPanel(DisplayUnit ruler) {
        super(new WrappedTextLayout("insets 0, fill, wrap 1, gap 0, hidemode 3", "[grow,fill]"));
        this.ruler = ruler;
        view = new TestDrawCanvas(draw, ruler);
        play.setName("play");
        play.setMnemonic('Y');
        play.addActionListener(e -> play(!clock.isRunning()));
        slider.setName("drawn");
        slider.getAccessibleContext().setAccessibleName("How far the knife is drawn");
        slider.addChangeListener(e -> {
            if (!showing) {
                play(false);
                draw.move((double) slider.getValue() / SLIDER_PER_MM);
            }
        });
        JPanel row = new JPanel(new MigLayout("insets 4 12 4 12, gap 10", "[][grow,fill]"));
        row.add(play, "w 96!");
        row.add(slider, "wmin 0");
        told.setName("draw told");
        add(view, "wmin 0, hmin 0, push, grow");
        add(new EdgeClearanceChart(draw, ruler), "wmin 0, gaptop 8, gapleft 102");
        add(row, "wmin 0");
        add(told, "wmin 0, gapleft 12, gapright 12, gapbottom 8, hmin 36");
        draw.watch(this::look);
        ruler.watch(this::look);
        addHierarchyListener(e -> {
            if (!isShowing()) {
                play(false);
            }
        });
        play(false);
    }

    public void show(Optional<SheathDesign> fitted) {
        draw.show(fitted);
        view.reshaped();
    }

    public TestDrawCanvas drawing() {
        return view;
    }

    TestDrawModel draw() {
        return draw;
    }

    private void play(boolean on) {
        if (on) {
            if (draw.drawnMm() >= draw.wayMm()) {
                draw.move(0);
            }
            lastNs = System.nanoTime();
            clock.start();
        } else {
            clock.stop();
        }
        play.setText(on ? "Hold" : "Draw");
        play.setIcon(ToolIcons.of(on ? "pause" : "play"));
        play.setToolTipText(on ? "Stop here" : "See the knife come out");
    }

    private void tick() {
        long now = System.nanoTime();
        draw.move(draw.drawnMm() + draw.wayMm() * (now - lastNs) / 1e9 / SECONDS);
        lastNs = now;
        if (draw.drawnMm() >= draw.wayMm()) {
            play(false);
        }
    }

    private void look() {
        showing = true;
        slider.setMaximum((int) Math.round(draw.wayMm() * SLIDER_PER_MM));
        slider.setValue((int) Math.round(draw.drawnMm() * SLIDER_PER_MM));
        showing = false;
        told.say(draw.check().map(this::told).orElse(""));
    }

    private String told(DrawCheck check) {
        String now = draw.step()
                .map(step -> "edge to stitch " + ruler.said(step.edgeToStitchMm()))
                .orElse("the edge is out");
        return "Drawn " + ruler.said(draw.drawnMm()) + ": " + now + ". Least during the draw "
                + ruler.said(check.leastEdgeToStitchMm()) + (check.stitchesAreSafe() ? "" : ", too little")
                + ". " + told(check.grip());
    }

    private String told(Retention grip) {
        return switch (grip.hold()) {
            case FORM ->
                "Formed leather grips the handle over " + ruler.said(grip.gripMm()) + ", and gives by up to "
                        + ruler.said(grip.pushedOpenMm()) + ".";
            case FRICTION ->
                "Leather lies against the handle over " + ruler.said(grip.gripMm()) + ": friction alone holds.";
            case NONE ->
                "Throat " + ruler.said(grip.throatMm()) + " wider than the knife in it: nothing holds but a strap.";
            case BLADE_ALONE -> "The sheath holds the blade alone.";
        };
    }
}
