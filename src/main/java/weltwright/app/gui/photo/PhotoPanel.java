package weltwright.app.gui.photo;

import java.util.Optional;
import java.util.stream.Collectors;
import javax.swing.JButton;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.model.DerivedValue;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.image.Photo;
import weltwright.trace.PhotoAssessment;
import weltwright.units.MeasureUnit;
import weltwright.wording.PhotoWording;
import weltwright.wording.TraceWording;

/**
 * The photo before it is traced, with the question that must be answered first, advice for a better photo, and a hint
 * above it.
 */
public final class PhotoPanel extends JPanel {
    private final JobModel model;
    private final PhotoCanvas canvas;
    private final WrappedText questionText = new WrappedText();
    private final WrappedText adviceText = new WrappedText(ThemeColors::text);
    private final WrappedText hintText = new WrappedText(ThemeColors::secondaryText);
    private final JButton backButton = new JButton("Back to the outline");
    private DerivedValue.State<PhotoAssessment> assessment = new DerivedValue.State<>(Optional.empty(), "", false);
    private Optional<Photo> assessedPhoto = Optional.empty();
    private String toldElsewhere = "";

    /** @param showOutline switches back to the outline */
    public PhotoPanel(JobModel model, Runnable showOutline) {
        super(new MigLayout("insets 8 0 0 0, fill, wrap 1, gap 0, hidemode 3", "[grow,fill]"));
        this.model = model;
        canvas = new PhotoCanvas(model);
        questionText.setName("photo question");
        adviceText.setName("photo advice");
        hintText.setName("photo hint");
        backButton.setName("back to outline");
        backButton.addActionListener(e -> showOutline.run());
        add(questionText, "wmin 0, gapleft 12, gapright 12, gapbottom 4");
        add(adviceText, "wmin 0, gapleft 12, gapright 12, gapbottom 4");
        add(hintText, "wmin 0, gapleft 12, gapright 12, gapbottom 4");
        add(backButton, "gapleft 12, gapbottom 6, growx 0");
        add(canvas, "wmin 0, hmin 0, push, grow");
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

    /** Leaves out the question where the window tells the same already, as why the photo could not be traced. */
    public void leaveOut(String told) {
        if (!told.equals(toldElsewhere)) {
            toldElsewhere = told;
            update();
        }
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
                                        .filter(question -> !question.equals(toldElsewhere))
                                        .orElse("")
                                : "");
        adviceText.showText(
                ready
                        ? describe(assessment.value().get(), model.unit())
                        : assessment.computing() ? "Looking at the photo…" : "");
        hintText.showText(hint());
        backButton.setVisible(model.job().silhouette().isPresent());
        revalidate();
    }

    private String hint() {
        return model.job().settings().ground().asRectangle().isPresent()
                ? "Pull the four corners to where the photo shows them: 1 to 2 is the width, 2 to 3 the height. Keys: 1 to"
                        + " 4 take hold of a corner, the arrows move it by a pixel, with Shift by ten. Near is good"
                        + " enough where straight edges run between them: those are found by themselves."
                : "";
    }

    /** The first note names the ground; with corners set by hand it also has the size of a pixel. */
    private static String describe(PhotoAssessment assessment, MeasureUnit unit) {
        String ground = assessment.notes().stream()
                .findFirst()
                .map(note -> TraceWording.sentence(note, unit))
                .orElse("");
        if (assessment.advice().isEmpty()) {
            return assessment.question().isPresent()
                    ? ground
                    : "The photo is good to trace. "
                            + assessment.notes().stream()
                                    .map(note -> TraceWording.sentence(note, unit))
                                    .collect(Collectors.joining(" "));
        }
        String findings = assessment.advice().stream()
                .map(advice -> PhotoWording.sentences(advice, unit))
                .collect(Collectors.joining("\n• ", "• ", ""));
        return ground.isEmpty() ? findings : ground + "\n" + findings;
    }
}
