package weltwright.app.gui.knife;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JButton;
import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.model.JobModel;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.job.JobFields;
import weltwright.message.Messages;
import weltwright.trace.ground.GroundChoice;
import weltwright.units.LengthField;

/**
 * The rows of a form for the ground of the job's photo: a list of grounds and the sizes that the chosen one needs. The
 * distance of the lines of a ruled ground is never proposed: until the user types it, the job's ground stays "find".
 */
public final class GroundFields {
    private static final Messages TEXTS = Messages.of(GroundFields.class);

    private static final GroundChoice ANY = new GroundChoice.Any();
    private static final GroundChoice SHEET = new GroundChoice.Sheet();

    /** Items that stand for grounds of any size. */
    private static final String RULED = "ruled";

    private static final String RECTANGLE = "rectangle";

    /**
     * Distance of the initial corners from the photo's borders, as a fraction of its width or height; chosen by eye.
     */
    private static final double INSET = 0.15;

    /** Initial sides of a rectangle: those of A4 paper (ISO 216). */
    private static final double A4_LONG_MM = 297;

    private static final double A4_SHORT_MM = 210;

    private final JobModel model;
    private final JComboBox<ComboBoxItem<String>> comboBox = new JComboBox<>();
    private final ValidatedField<OptionalDouble> pitch = FieldFactory.optionalLength(JobFields.LINE_PITCH, mm -> mm);
    private final ValidatedField<Double> width = sideField("width of the rectangle", A4_LONG_MM);
    private final ValidatedField<Double> height = sideField("height of the rectangle", A4_SHORT_MM);
    private final JButton cornersButton = new JButton(TEXTS.text("ground-fields.set-its-corners-on-the"));
    private final FormPanel form;
    private final Runnable showCorners;
    private Object shownJob = List.of();
    private boolean pitchMissing;
    private boolean updating;

    /**
     * @param form gets these rows
     * @param showCorners shows the photo with the rectangle's corners
     */
    public GroundFields(JobModel model, FormPanel form, Runnable showCorners) {
        this.model = model;
        this.form = form;
        this.showCorners = showCorners;
        comboBox.setName("ground");
        comboBox.addItem(new ComboBoxItem<>(ANY.words(), TEXTS.text("ground-fields.found-in-the-photo")));
        comboBox.addItem(new ComboBoxItem<>(SHEET.words(), TEXTS.text("ground-fields.the-printed-sheet")));
        comboBox.addItem(new ComboBoxItem<>(RULED, TEXTS.text("ground-fields.ruled-mat-or-paper")));
        comboBox.addItem(new ComboBoxItem<>(GroundChoice.Paper.A4.words(), TEXTS.text("ground-fields.blank-a4-paper")));
        comboBox.addItem(
                new ComboBoxItem<>(GroundChoice.Paper.LETTER.words(), TEXTS.text("ground-fields.blank-letter-paper")));
        comboBox.addItem(new ComboBoxItem<>(RECTANGLE, TEXTS.text("ground-fields.corners-by-hand")));
        comboBox.addActionListener(e -> {
            if (!updating) {
                select(ComboBoxItem.selected(comboBox));
            }
        });
        cornersButton.setName("set corners");
        pitch.onCommit(() -> {
            GroundChoice typed = pitch.value().isPresent()
                    ? new GroundChoice.Ruled(pitch.value().getAsDouble())
                    : ANY;
            setGround(pitch, typed);
        });
        width.onCommit(() -> resize(width));
        height.onCommit(() -> resize(height));
        form.addRow(TEXTS.text("ground-fields.it-lay-on"), comboBox, TEXTS.text("ground-fields.what-it-lay-on-in"));
        form.addRow(TEXTS.text("ground-fields.lines-apart"), pitch, TEXTS.text("ground-fields.from-each-line-of-the"));
        form.addRow(
                TEXTS.text("ground-fields.width-1-to-2"), width, TEXTS.text("ground-fields.of-the-rectangle-from-its"));
        form.addRow(
                TEXTS.text("ground-fields.height-2-to-3"),
                height,
                TEXTS.text("ground-fields.of-the-rectangle-from-its-corner-2-to"));
        form.addFullWidth(cornersButton);
        cornersButton.addActionListener(e -> showCorners.run());
        comboBox.addActionListener(e -> {
            if (!updating && ground().asRectangle().isPresent()) {
                showCorners.run();
            }
        });
    }

    /** Shows the row for the distance of the lines until a ground is chosen: the photo shows a ruled ground. */
    void requirePitch() {
        pitchMissing = true;
    }

    /** Returns whether the ground is the printed reference sheet, or not known to be another one. */
    boolean mayBeSheet() {
        return ground().equals(SHEET) || (ground().equals(ANY) && !pitchMissing);
    }

    void focus() {
        comboBox.requestFocusInWindow();
    }

    void chooseRectangle() {
        ComboBoxItem.select(comboBox, RECTANGLE);
        showCorners.run();
    }

    /** Shows the job's ground; to be called after each of its changes. */
    public void update(Job job) {
        Object opened = model.openedPhoto();
        pitchMissing &= opened.equals(shownJob);
        shownJob = opened;
        GroundChoice ground = job.settings().ground();
        Optional<GroundChoice.Rectangle> rectangle = ground.asRectangle();
        pitchMissing &= ground.equals(ANY);
        boolean ruled = pitchMissing || ground.linePitchMm().isPresent();
        updating = true;
        ComboBoxItem.select(comboBox, ruled ? RULED : rectangle.isPresent() ? RECTANGLE : ground.words());
        updating = false;
        pitch.setValue(ground.linePitchMm(), job.typedText(pitch.name()));
        rectangle.ifPresent(r -> {
            width.setValue(r.widthMm(), job.typedText(width.name()));
            height.setValue(r.heightMm(), job.typedText(height.name()));
        });
        form.setRowVisible(pitch, ruled);
        form.setRowVisible(width, rectangle.isPresent());
        form.setRowVisible(height, rectangle.isPresent());
        cornersButton.setVisible(rectangle.isPresent() && job.photo().isPresent());
    }

    private GroundChoice ground() {
        return model.job().settings().ground();
    }

    private void select(String item) {
        pitchMissing = item.equals(RULED);
        if (item.equals(RULED)) {
            setGround(ANY);
            update(model.job());
            pitch.textField().requestFocusInWindow();
        } else {
            setGround(item.equals(RECTANGLE) ? defaultRectangle() : GroundChoice.parse(item));
        }
    }

    private void resize(ValidatedField<Double> side) {
        ground().asRectangle()
                .ifPresent(
                        r -> setGround(side, new GroundChoice.Rectangle(width.value(), height.value(), r.corners())));
    }

    private void setGround(GroundChoice ground) {
        model.change(job -> job.withSettings(job.settings().withGround(ground)));
    }

    private void setGround(ValidatedField<?> field, GroundChoice ground) {
        model.change(
                field.editSession(),
                job -> job.withSettings(job.settings().withGround(ground)).withTyped(field.name(), field.typedText()));
    }

    /** Returns an A4 rectangle in the middle of the photo, landscape where the photo is. */
    private GroundChoice.Rectangle defaultRectangle() {
        double across = model.job().photo().map(Photo::widthPx).orElse(4);
        double down = model.job().photo().map(Photo::heightPx).orElse(3);
        boolean landscape = across >= down;
        return new GroundChoice.Rectangle(
                landscape ? A4_LONG_MM : A4_SHORT_MM,
                landscape ? A4_SHORT_MM : A4_LONG_MM,
                List.of(
                        new Point(INSET * across, INSET * down),
                        new Point((1 - INSET) * across, INSET * down),
                        new Point((1 - INSET) * across, (1 - INSET) * down),
                        new Point(INSET * across, (1 - INSET) * down)));
    }

    private static ValidatedField<Double> sideField(String name, double mm) {
        LengthField side = GroundChoice.Rectangle.SIDE;
        return FieldFactory.lengthOnCommit(LengthField.of(name, side.leastMm(), side.greatestMm()), mm);
    }
}
