package weltwright.app.gui.knife;

import java.util.List;
import java.util.OptionalDouble;
import javax.swing.JButton;
import javax.swing.JComboBox;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.form.ValidatedFields;
import weltwright.app.gui.model.JobModel;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.job.JobFields;
import weltwright.trace.ground.GroundChoice;
import weltwright.units.LengthField;

/**
 * Lines for what the knife lay on, and for what has to be known of it. How far apart the lines of a ruled ground are is
 * never filled in: until it is typed, the job goes on looking for a ground by itself.
 */
final class GroundFields {
    private static final String RULED = "ruled";
    private static final String RECTANGLE = "rectangle";

    /** Corners not set yet lie so far inside the picture, as a part of it. */
    private static final double INSET = 0.15;

    /** A place to begin: the sides of the paper that is at hand (ISO 216, A4). */
    private static final double LONG_MM = 297;

    private static final double SHORT_MM = 210;

    private final JobModel bench;
    private final JComboBox<ComboBoxItem<String>> box = new JComboBox<>();
    private final ValidatedField<OptionalDouble> pitch = ValidatedFields.lengthIfAny(JobFields.LINE_PITCH, mm -> mm);
    private final ValidatedField<Double> width = side("width of the rectangle", LONG_MM);
    private final ValidatedField<Double> height = side("height of the rectangle", SHORT_MM);
    private final JButton corners = new JButton("Set its corners on the photo");
    private final FormPanel form;
    private boolean pitchMissing;
    private boolean showing;

    /**
     * @param form the one that gets these rows
     * @param toCorners what shows the photo with the corners to be set
     */
    GroundFields(JobModel bench, FormPanel form, Runnable toCorners) {
        this.bench = bench;
        this.form = form;
        box.setName("ground");
        box.addItem(new ComboBoxItem<>(new GroundChoice.Any().words(), "Found in the photo"));
        box.addItem(new ComboBoxItem<>(new GroundChoice.Sheet().words(), "The printed sheet"));
        box.addItem(new ComboBoxItem<>(RULED, "Ruled mat or paper"));
        box.addItem(new ComboBoxItem<>(GroundChoice.Paper.A4.words(), "Blank A4 paper"));
        box.addItem(new ComboBoxItem<>(GroundChoice.Paper.LETTER.words(), "Blank Letter paper"));
        box.addItem(new ComboBoxItem<>(RECTANGLE, "Corners by hand"));
        box.addActionListener(e -> {
            if (!showing) {
                choose(ComboBoxItem.chosen(box));
            }
        });
        corners.setName("set corners");
        pitch.onTaken(() -> pitch.value()
                .ifPresentOrElse(
                        mm -> lie(pitch.session(), new GroundChoice.Ruled(mm)),
                        () -> lie(null, new GroundChoice.Any())));
        width.onTaken(this::resize);
        height.onTaken(this::resize);
        form.line("It lay on", 'N', box, "What the knife lay on in the photo; the printed sheet measures best");
        form.line("Lines apart", 'I', pitch, "From each line of the ground to the next, bold or not: 10 mm, 1/2 in");
        form.line("Width, 1 to 2", (char) 0, width, "Of the rectangle, from its corner 1 to its corner 2");
        form.line("Height, 2 to 3", (char) 0, height, "Of the rectangle, from its corner 2 to its corner 3");
        form.wide(corners);
        corners.addActionListener(e -> toCorners.run());
        box.addActionListener(e -> {
            if (!showing && bench.job().settings().ground() instanceof GroundChoice.Rectangle) {
                toCorners.run();
            }
        });
    }

    /** The photo shows a ruled ground, and how far apart its lines are is all that is missing. */
    void askForPitch() {
        pitchMissing = true;
    }

    /** Whether it may yet turn out to be the printed sheet. */
    boolean maybeSheet() {
        GroundChoice ground = bench.job().settings().ground();
        return ground instanceof GroundChoice.Sheet || (ground instanceof GroundChoice.Any && !pitchMissing);
    }

    void follow(Job job) {
        GroundChoice ground = job.settings().ground();
        boolean ruled = ground instanceof GroundChoice.Ruled;
        boolean rectangle = ground instanceof GroundChoice.Rectangle;
        pitchMissing &= ground instanceof GroundChoice.Any;
        showing = true;
        ComboBoxItem.choose(box, ruled || pitchMissing ? RULED : rectangle ? RECTANGLE : ground.words());
        showing = false;
        if (ground instanceof GroundChoice.Ruled lines) {
            pitch.show(OptionalDouble.of(lines.pitchMm()));
        } else {
            pitch.show(OptionalDouble.empty());
        }
        if (ground instanceof GroundChoice.Rectangle told) {
            width.show(told.widthMm());
            height.show(told.heightMm());
        }
        form.showLine(pitch, ruled || pitchMissing);
        form.showLine(width, rectangle);
        form.showLine(height, rectangle);
        corners.setVisible(rectangle && job.photo().isPresent());
    }

    private void choose(String words) {
        pitchMissing = words.equals(RULED);
        if (words.equals(RULED)) {
            lie(null, new GroundChoice.Any());
            follow(bench.job());
            pitch.field().requestFocusInWindow();
        } else {
            lie(null, words.equals(RECTANGLE) ? rectangle() : GroundChoice.parse(words));
        }
    }

    private void resize() {
        if (bench.job().settings().ground() instanceof GroundChoice.Rectangle told) {
            lie(null, new GroundChoice.Rectangle(width.value(), height.value(), told.corners()));
        }
    }

    private void lie(@Nullable Object session, GroundChoice ground) {
        bench.change(session, job -> job.withSettings(job.settings().withGround(ground)));
    }

    /** Lying as the photo lies, to be pulled to where it is. */
    private GroundChoice.Rectangle rectangle() {
        double across = bench.job().photo().map(Photo::widthPx).orElse(4);
        double down = bench.job().photo().map(Photo::heightPx).orElse(3);
        boolean lying = across >= down;
        return new GroundChoice.Rectangle(
                lying ? LONG_MM : SHORT_MM,
                lying ? SHORT_MM : LONG_MM,
                List.of(
                        new Point(INSET * across, INSET * down),
                        new Point((1 - INSET) * across, INSET * down),
                        new Point((1 - INSET) * across, (1 - INSET) * down),
                        new Point(INSET * across, (1 - INSET) * down)));
    }

    private static ValidatedField<Double> side(String name, double mm) {
        LengthField side = GroundChoice.Rectangle.SIDE;
        return ValidatedFields.slowLength(LengthField.of(name, side.leastMm(), side.greatestMm()), mm);
    }
}
