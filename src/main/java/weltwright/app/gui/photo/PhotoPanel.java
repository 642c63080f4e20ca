package weltwright.app.gui.photo;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.finding.Finding;
import weltwright.app.gui.finding.FindingList;
import weltwright.app.gui.finding.FindingsPanel;
import weltwright.app.gui.model.DerivedValue;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappingRow;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Severity;
import weltwright.trace.PhotoAssessment;
import weltwright.units.MeasureUnit;
import weltwright.wording.PhotoWording;
import weltwright.wording.TraceWording;

/**
 * The photo before it is traced, with the question that must be answered first and a hint above it, and what would make
 * it better among the findings beneath. Where it could not be traced, two brushes mark what is knife in it.
 */
public final class PhotoPanel extends JPanel {
    private static final Messages TEXTS = Messages.of(PhotoPanel.class);

    private final JobModel model;
    private final FindingList findings;
    private final PhotoCanvas canvas;
    private final WrappedText questionText = new WrappedText();
    private final WrappedText adviceText = new WrappedText(ThemeColors::text);
    private final WrappedText hintText = new WrappedText(ThemeColors::secondaryText);
    private final JToggleButton notKnifeButton = new JToggleButton(TEXTS.text("photo-panel.not-knife"));
    private final JToggleButton knifeButton = new JToggleButton(TEXTS.text("photo-panel.knife"));
    private final JPanel brushes = new WrappingRow(4);
    private final JButton backButton = new JButton(TEXTS.text("photo-panel.back-to-the-outline"));
    private DerivedValue.State<PhotoAssessment> assessment = new DerivedValue.State<>(Optional.empty(), "", false);
    private Optional<Photo> assessedPhoto = Optional.empty();
    private String failure = "";

    /**
     * @param showOutline switches back to the outline
     * @param findings receives what would make the photo better
     */
    public PhotoPanel(JobModel model, Runnable showOutline, FindingList findings) {
        super(new MigLayout("insets 8 0 0 0, fill, wrap 1, gap 0, hidemode 3", "[grow,fill]"));
        this.model = model;
        this.findings = findings;
        canvas = new PhotoCanvas(model);
        questionText.setName("photo question");
        adviceText.setName("photo advice");
        hintText.setName("photo hint");
        notKnifeButton.setName("mark what is not knife");
        notKnifeButton.addActionListener(e -> choose(notKnifeButton, knifeButton));
        knifeButton.setName("mark what is knife");
        knifeButton.addActionListener(e -> choose(knifeButton, notKnifeButton));
        canvas.bindKey("pressed O", () -> clickIfShowing(notKnifeButton));
        canvas.bindKey("pressed I", () -> clickIfShowing(knifeButton));
        canvas.bindKey("DELETE", () -> {
            if (brushes.isShowing()) {
                canvas.removeMarks();
            }
        });
        brushes.add(notKnifeButton);
        brushes.add(knifeButton);
        backButton.setName("back to outline");
        backButton.addActionListener(e -> showOutline.run());
        add(questionText, "wmin 0, gapleft 12, gapright 12, gapbottom 4");
        add(adviceText, "wmin 0, gapleft 12, gapright 12, gapbottom 4");
        add(hintText, "wmin 0, gapleft 12, gapright 12, gapbottom 4");
        add(brushes, "wmin 0, gapleft 12, gapright 12, gapbottom 4");
        add(backButton, "gapleft 12, gapbottom 6, growx 0");
        add(FindingsPanel.beneath(canvas, findings), "wmin 0, hmin 0, push, grow");
        model.subscribe(this::update);
        canvas.addListener(this::update);
    }

    public PhotoCanvas canvas() {
        return canvas;
    }

    /** Returns whether the assessment of the present photo and ground is complete. */
    boolean isAssessed() {
        return !assessment.computing() && assessedPhoto.equals(model.job().photo());
    }

    /**
     * Shows where a photo could not be traced, and offers the brushes. The window tells why; a question that tells the
     * same is left out.
     *
     * @param reason why it could not be traced; empty where it was not tried
     * @param outlinePx points along the closed line that was taken for the outline, or none
     */
    public void showFailure(String reason, List<Point> outlinePx) {
        canvas.setRejectedOutline(outlinePx);
        if (!reason.equals(failure)) {
            failure = reason;
            update();
        }
    }

    /** Gives the mouse the brush that marks what is not knife. */
    public void markNotKnife() {
        if (!notKnifeButton.isSelected()) {
            notKnifeButton.doClick();
        }
    }

    private void choose(JToggleButton chosen, JToggleButton other) {
        other.setSelected(false);
        canvas.setBrush(chosen.isSelected() ? Optional.of(chosen.equals(knifeButton)) : Optional.empty());
        canvas.requestFocusInWindow();
    }

    private static void clickIfShowing(JToggleButton button) {
        if (button.isShowing()) {
            button.doClick();
        }
    }

    /** Returns whether the photo could not be traced, or not without marks. */
    private boolean isRefused() {
        return (!failure.isEmpty() || !model.job().settings().marks().isEmpty())
                && model.job().trace().isEmpty();
    }

    /** Returns whether marks may help: a photo on a known ground could not be traced. */
    private boolean hasBrushes() {
        return isRefused()
                && assessment.value().flatMap(PhotoAssessment::ground).isPresent();
    }

    /** Shows the assessment of the photo, or that it is being computed. */
    public void setAssessment(DerivedValue.State<PhotoAssessment> newAssessment) {
        assessment = newAssessment;
        if (!newAssessment.computing()) {
            assessedPhoto = model.job().photo();
        }
        canvas.setGround(
                newAssessment.computing()
                        ? Optional.empty()
                        : newAssessment.value().flatMap(PhotoAssessment::ground));
        update();
    }

    /** Keeps the texts while the same photo is assessed again, so that the photo below does not move. */
    private void update() {
        boolean ready = assessment.value().isPresent()
                && assessedPhoto.equals(model.job().photo());
        questionText.showText(
                !canvas.errorMessage().isEmpty()
                        ? canvas.errorMessage()
                        : ready
                                ? assessment
                                        .value()
                                        .flatMap(PhotoAssessment::question)
                                        .filter(question -> !question.equals(failure))
                                        .orElse("")
                                : "");
        adviceText.showText(
                ready
                        ? describe(assessment.value().get(), model.unit())
                        : assessment.computing() ? TEXTS.text("photo-panel.looking-at-the-photo") : "");
        hintText.showText(hint());
        findings.set(Finding.Place.PHOTO, ready ? findings(assessment.value().get()) : List.of());
        brushes.setVisible(hasBrushes());
        if (!isRefused()) {
            notKnifeButton.setSelected(false);
            knifeButton.setSelected(false);
            canvas.setBrush(Optional.empty());
        }
        backButton.setVisible(model.job().silhouette().isPresent());
        revalidate();
    }

    private String hint() {
        if (hasBrushes()) {
            return TEXTS.text("photo-panel.paint-over-what-is-no");
        }
        return model.job().settings().ground().asRectangle().isPresent()
                ? TEXTS.text("photo-panel.pull-the-four-corners-to")
                : "";
    }

    /** The question stops the maker, advice is to be minded, and what was found in the photo is a note. */
    private List<Finding> findings(PhotoAssessment ready) {
        MeasureUnit unit = model.unit();
        List<Finding> found = new ArrayList<>();
        ready.question().ifPresent(question -> found.add(finding(Severity.STOP, question)));
        ready.advice().forEach(advice -> found.add(finding(Severity.MIND, PhotoWording.sentences(advice, unit))));
        ready.notes().forEach(note -> found.add(finding(Severity.NOTE, TraceWording.sentence(note, unit))));
        return found;
    }

    private Finding finding(Severity severity, String text) {
        return new Finding(Finding.Place.PHOTO, severity, text, canvas::zoomToFit);
    }

    /** One sentence: that the photo is good to trace, or else what was found in it. Figures are among the findings. */
    private static String describe(PhotoAssessment assessment, MeasureUnit unit) {
        boolean good = assessment.question().isEmpty() && assessment.advice().isEmpty();
        return good
                ? TEXTS.text("photo-panel.the-photo-is-good-to")
                : assessment.notes().stream()
                        .findFirst()
                        .map(note -> TraceWording.sentence(note, unit))
                        .orElse("");
    }
}
