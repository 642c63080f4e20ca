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
import weltwright.trace.ground.GroundChoice;
import weltwright.wording.PhotoWording;
import weltwright.wording.TraceWording;

/**
 * The photo before it is traced: over it what it lies on, above it what would make a better photo, and what has to be
 * told first.
 */
public final class PhotoPanel extends JPanel {
    private final JobModel bench;
    private final PhotoCanvas view;
    private final WrappedText question = new WrappedText();
    private final WrappedText advice = new WrappedText(ThemeColors::text);
    private final WrappedText hint = new WrappedText(ThemeColors::secondaryText);
    private final JButton back = new JButton("Back to the outline");
    private DerivedValue.State<PhotoAssessment> look = new DerivedValue.State<>(Optional.empty(), "", false);
    private Optional<Photo> lookedAt = Optional.empty();

    /** @param toOutline what shows the outline again */
    public PhotoPanel(JobModel bench, Runnable toOutline) {
        super(new MigLayout("insets 8 0 0 0, fill, wrap 1, gap 0, hidemode 3", "[grow,fill]"));
        this.bench = bench;
        view = new PhotoCanvas(bench);
        question.setName("photo question");
        advice.setName("photo advice");
        hint.setName("photo hint");
        back.setName("back to outline");
        back.addActionListener(e -> toOutline.run());
        add(question, "wmin 0, gapleft 12, gapright 12, gapbottom 4");
        add(advice, "wmin 0, gapleft 12, gapright 12, gapbottom 4");
        add(hint, "wmin 0, gapleft 12, gapright 12, gapbottom 4");
        add(back, "gapleft 12, gapbottom 6, growx 0");
        add(view, "wmin 0, hmin 0, push, grow");
        bench.watch(this::look);
        view.watch(this::look);
    }

    public PhotoCanvas drawing() {
        return view;
    }

    /** Shows what a first look at the photo gave, or that one is under way. */
    public void show(DerivedValue.State<PhotoAssessment> now) {
        look = now;
        if (!now.inWork()) {
            lookedAt = bench.job().photo();
        }
        view.showGround(now.inWork() ? Optional.empty() : now.made().flatMap(PhotoAssessment::ground));
        look();
    }

    /** While the same photo is looked at anew, what was said of it stays: the photo under the words must not leap. */
    private void look() {
        boolean ready = look.made().isPresent() && lookedAt.equals(bench.job().photo());
        question.say(
                !view.refusal().isEmpty()
                        ? view.refusal()
                        : ready ? look.made().flatMap(PhotoAssessment::question).orElse("") : "");
        advice.say(ready ? told(look.made().get()) : look.inWork() ? "Looking at the photo…" : "");
        hint.say(hint());
        back.setVisible(bench.job().silhouette().isPresent());
        revalidate();
    }

    private String hint() {
        return bench.job().settings().ground() instanceof GroundChoice.Rectangle
                ? "Pull the four corners to where the photo shows them: 1 to 2 is the width, 2 to 3 the height. Keys: 1 to"
                        + " 4 take hold of a corner, the arrows move it by a pixel, with Shift by ten. Near is good"
                        + " enough where straight edges run between them: those are found by themselves."
                : "";
    }

    /** The first note says what the knife was found to lie on; with corners set by hand also what a pixel is worth. */
    private static String told(PhotoAssessment look) {
        String ground =
                look.notes().stream().findFirst().map(TraceWording::sentence).orElse("");
        if (look.advice().isEmpty()) {
            return look.question().isPresent()
                    ? ground
                    : "The photo is good to trace. "
                            + look.notes().stream().map(TraceWording::sentence).collect(Collectors.joining(" "));
        }
        String better =
                look.advice().stream().map(PhotoWording::sentences).collect(Collectors.joining("\n• ", "• ", ""));
        return ground.isEmpty() ? better : ground + "\n" + better;
    }
}
