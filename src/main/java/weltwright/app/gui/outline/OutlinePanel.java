package weltwright.app.gui.outline;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.swing.AbstractButton;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.JToggleButton;
import weltwright.app.gui.drawing.TapeButton;
import weltwright.app.gui.finding.Finding;
import weltwright.app.gui.finding.FindingList;
import weltwright.app.gui.finding.FindingsPanel;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.photo.PhotoAssessor;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.theme.ToolIcons;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.app.gui.widget.WrappingRow;
import weltwright.job.Job;
import weltwright.job.OutlineAccuracy;
import weltwright.knife.Silhouette;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Severity;
import weltwright.trace.outline.UncertainStretch;
import weltwright.wording.TraceWording;

/**
 * The canvas with the outline, and above it the tools, a hint on the selected one, and buttons for uncertain stretches.
 */
public final class OutlinePanel extends JPanel {
    private static final Messages TEXTS = Messages.of(OutlinePanel.class);

    private final JobModel model;
    private final FindingList findings;
    private final OutlineCanvas canvas;
    private final Map<OutlineTool, JToggleButton> toolButtons = new EnumMap<>(OutlineTool.class);
    private final JPanel toolBar = new WrappingRow(4);
    private final JToggleButton groundButton = new JToggleButton(TEXTS.text("outline-panel.ground"));
    private final JButton nextButton = new JButton();
    private final JButton acceptButton = new JButton(TEXTS.text("outline-panel.it-is-right-here"));
    private final WrappedText hint = new WrappedText(ThemeColors::secondaryText);
    private final WrappedText errorText = new WrappedText();

    /**
     * @param assessor of the queue, from which traces take what they need not find again
     * @param findings receives what is doubtful of the outline
     */
    public OutlinePanel(JobModel model, TaskQueue tasks, PhotoAssessor assessor, FindingList findings) {
        super(new WrappedTextLayout("insets 0, fill, wrap 1, gap 0, hidemode 3", "[grow,fill]"));
        this.model = model;
        this.findings = findings;
        canvas = new OutlineCanvas(model, tasks, assessor);
        ButtonGroup group = new ButtonGroup();
        for (OutlineTool tool : OutlineTool.values()) {
            JToggleButton button = new JToggleButton(tool.label());
            button.setName("tool " + tool.label());
            button.putClientProperty("FlatLaf.style", "margin: 2,6,2,6");
            button.setToolTipText(TEXTS.text("outline-panel.in-the-drawing", tool.hint(), tool.key()));
            button.addActionListener(e -> {
                canvas.setTool(tool);
                canvas.requestFocusInWindow();
            });
            group.add(button);
            toolButtons.put(tool, button);
            toolBar.add(button);
        }
        nextButton.setName("next unsure");
        nextButton.setToolTipText(TEXTS.text("outline-panel.shows-the-next-place-where"));
        nextButton.addActionListener(e -> canvas.showUncertainStretch(1));
        acceptButton.setName("right here");
        acceptButton.setToolTipText(TEXTS.text("outline-panel.the-outline-is-right-at"));
        acceptButton.addActionListener(e -> canvas.acceptStretch());
        groundButton.setName("show ground");
        groundButton.setToolTipText(TEXTS.text("outline-panel.draws-the-lines-of-what"));
        ToolIcons.replaceText(groundButton, "ground");
        groundButton.addActionListener(e -> {
            canvas.groundLayer().setShown(groundButton.isSelected());
            canvas.groundChanged();
        });
        TapeButton tape = new TapeButton(List.of(canvas), () -> canvas);
        LayersButton layers = new LayersButton(canvas.opacity(), canvas::repaint);
        for (AbstractButton button : List.of(tape, layers, groundButton)) {
            button.putClientProperty("FlatLaf.style", "margin: 2,6,2,6");
        }
        toolBar.add(tape);
        toolBar.add(layers);
        toolBar.add(groundButton);
        JPanel guidance =
                new JPanel(new WrappedTextLayout("insets 0 12 4 10, fillx, gap 4, hidemode 3", "[grow,fill]12[][]"));
        guidance.add(hint, "wmin 0");
        guidance.add(nextButton);
        guidance.add(acceptButton);
        hint.setName("tool hint");
        errorText.setName("tool refusal");
        add(toolBar, "wmin 0, gapleft 10, gapright 10, gaptop 2");
        add(guidance, "wmin 0");
        add(errorText, "wmin 0, gapleft 12, gapright 12, gapbottom 4");
        add(FindingsPanel.beneath(canvas, findings), "wmin 0, hmin 0, push, grow");
        model.subscribe(this::update);
        model.subscribe(this::updateFindings);
        canvas.addListener(this::update);
        update();
    }

    public OutlineCanvas canvas() {
        return canvas;
    }

    private void update() {
        boolean hasOutline = model.job().silhouette().isPresent();
        toolBar.setVisible(hasOutline);
        Objects.requireNonNull(toolButtons.get(canvas.tool())).setSelected(true);
        toolButtons.forEach((tool, button) ->
                button.setEnabled(!tool.isBrush() || canvas.brush().isAvailable()));
        groundButton.setVisible(canvas.groundLayer().isAvailable());
        groundButton.setSelected(canvas.groundLayer().isShown());
        int left = model.job().unsure().size();
        nextButton.setText(
                left == 1
                        ? TEXTS.text("outline-panel.1-place-to-look-at")
                        : TEXTS.text("outline-panel.places-to-look-at", left));
        nextButton.setVisible(left > 0);
        acceptButton.setVisible(canvas.tour().current().isPresent());
        hint.showText(hasOutline ? hintText() : "");
        errorText.showText(canvas.errorMessage());
        revalidate();
    }

    private void updateFindings() {
        Job job = model.job();
        List<Finding> found = new ArrayList<>();
        if (job.asksForEdge()) {
            Silhouette drawn = job.silhouette().orElseThrow();
            found.add(new Finding(
                    Finding.Place.OUTLINE,
                    Severity.MIND,
                    TEXTS.text("edge-side"),
                    canvas::zoomToFit,
                    Optional.of(new Finding.Remedy(
                            TEXTS.text("edge-side.right"),
                            () -> model.change(asked -> asked.withSpine(drawn.spineOnLeft()))))));
        }
        job.silhouette().ifPresent(s -> {
            Messages inUnit = TEXTS.withUnit(model.unit());
            for (UncertainStretch stretch : job.unsure()) {
                found.add(new Finding(
                        Finding.Place.OUTLINE,
                        Severity.MIND,
                        inUnit.text(
                                "unsure",
                                s.landmarks().tip().x() - stretch.from().x()),
                        () -> canvas.showUncertainStretch(stretch),
                        Optional.of(new Finding.Remedy(
                                TEXTS.text("unsure.right"),
                                () -> model.change(doubted -> doubted.withReviewed(stretch))))));
            }
        });
        OutlineAccuracy.of(job)
                .filter(accuracy -> accuracy.contradictionMm() > 0)
                .ifPresent(accuracy -> found.add(new Finding(
                        Finding.Place.OUTLINE,
                        Severity.MIND,
                        TEXTS.withUnit(model.unit()).text("caliper-differs", accuracy.contradictionMm()),
                        canvas::zoomToFit)));
        job.trace()
                .ifPresent(trace -> trace.notes()
                        .forEach(note -> found.add(new Finding(
                                Finding.Place.OUTLINE,
                                Severity.NOTE,
                                TraceWording.sentence(note, model.unit()),
                                canvas::zoomToFit))));
        findings.set(Finding.Place.OUTLINE, found);
    }

    private String hintText() {
        return canvas.tour().isActive()
                ? TEXTS.text("outline-panel.the-photo-s-edge-was")
                : canvas.tool().hint();
    }
}
