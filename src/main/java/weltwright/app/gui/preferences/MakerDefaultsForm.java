package weltwright.app.gui.preferences;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.app.gui.widget.WrappedText;
import weltwright.error.UserFacingException;
import weltwright.job.HardwareFile;
import weltwright.job.MakerDefaults;
import weltwright.job.MakerDefaultsFile;
import weltwright.message.Messages;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.spec.SpecFields;
import weltwright.units.LengthField;

/** The form of the maker's defaults for new jobs. Each change is written at once. */
final class MakerDefaultsForm extends FormPanel {
    private static final Messages MESSAGES = Messages.of(MakerDefaultsForm.class);

    private final transient MakerDefaultsFile file;
    private final JTextField hardware = new JTextField();
    private final JButton forget;
    private final JButton open;
    private final WrappedText error = new WrappedText();
    private transient MakerDefaults defaults;
    private transient Runnable errorListener = () -> {};

    MakerDefaultsForm(MakerDefaultsFile file, FileDialogs dialogs) {
        super("0 24 0 24");
        this.file = file;
        Optional<String> unreadable = Optional.empty();
        try {
            defaults = file.read();
        } catch (UserFacingException e) {
            defaults = MakerDefaults.USUAL;
            unreadable = Optional.of(e.getMessage());
        }
        addHeading(MESSAGES.text("defaults"));
        addText(MESSAGES.text("defaults.text"));
        ValidatedField<List<Double>> leather = FieldFactory.leathers(defaults.leathersMm());
        ValidatedField<List<Double>> pitch = FieldFactory.stitchPitches(defaults.pitchesMm());
        ValidatedField<List<Double>> thread = FieldFactory.threads(defaults.threadsMm());
        ValidatedField<Double> margin = length(SpecFields.STITCH_MARGIN, defaults.marginMm());
        ValidatedField<Double> belt = length(SpecFields.BELT_WIDTH, defaults.beltWidthMm());
        addField("leather", leather, SpecFields.LEATHER_THICKNESS.name(), MakerDefaults::withLeathersMm);
        addField("pitch", pitch, SpecFields.PITCH.name(), MakerDefaults::withPitchesMm);
        addField("thread", thread, SpecFields.THREAD.name(), MakerDefaults::withThreadsMm);
        addField("margin", margin, SpecFields.STITCH_MARGIN.name(), MakerDefaults::withMarginMm);
        addField("belt", belt, SpecFields.BELT_WIDTH.name(), MakerDefaults::withBeltWidthMm);
        hardware.setName("preferred hardware");
        hardware.setEditable(false);
        addRow(MESSAGES.text("hardware"), hardware, MESSAGES.text("hardware.tip"));
        open = new JButton(new RunnableAction(
                MESSAGES.text("hardware.open"), MESSAGES.text("hardware.open.tip"), () -> openHardware(dialogs)));
        open.setName("open preferred hardware");
        forget = new JButton(new RunnableAction(
                MESSAGES.text("hardware.forget"),
                MESSAGES.text("hardware.forget.tip"),
                () -> change(old -> old.withHardware(Optional.empty()))));
        forget.setName("forget preferred hardware");
        JPanel buttons = new JPanel(new MigLayout("insets 0, gap 6", "push[][]"));
        buttons.add(forget);
        buttons.add(open);
        addFullWidth(buttons);
        error.setName("defaults wrong");
        addFullWidth(error);
        showHardware();
        error.showText(unreadable.orElse(""));
        if (unreadable.isPresent()) {
            for (ValidatedField<?> field : new ValidatedField<?>[] {leather, pitch, thread, margin, belt}) {
                field.textField().setEnabled(false);
            }
            open.setEnabled(false);
            forget.setEnabled(false);
        }
    }

    private static ValidatedField<Double> length(LengthField field, double mm) {
        return FieldFactory.lengthOnCommit(field, mm);
    }

    /** Sets the listener that is called whenever an error text was shown or hidden that belongs to no field. */
    void onError(Runnable listener) {
        errorListener = listener;
    }

    /** Adds the row of a field. Its component is named apart from the field of the job for the same measure. */
    private <T> void addField(
            String key, ValidatedField<T> field, String typedName, BiFunction<MakerDefaults, T, MakerDefaults> setter) {
        field.textField().setName("preferred " + typedName);
        addRow(MESSAGES.text(key), field, MESSAGES.text(key + ".tip"));
        field.setValue(field.value(), Optional.ofNullable(defaults.typed().get(typedName)));
        field.onCommit(() -> change(old -> setter.apply(old, field.value()).withTyped(typedName, field.typedText())));
    }

    private void openHardware(FileDialogs dialogs) {
        Optional<Path> chosen =
                dialogs.chooseFile(MESSAGES.text("hardware.open.title"), MESSAGES.text("hardware.open.files"), "json");
        if (chosen.isEmpty()) {
            return;
        }
        try {
            HardwareList list = HardwareFile.read(chosen.get());
            change(old -> old.withHardware(Optional.of(list)));
        } catch (UserFacingException e) {
            showError(e.getMessage());
        }
    }

    private void change(UnaryOperator<MakerDefaults> edit) {
        MakerDefaults changed = edit.apply(defaults);
        try {
            file.write(changed);
            defaults = changed;
            showError("");
        } catch (UserFacingException e) {
            showError(e.getMessage());
        }
        showHardware();
    }

    private void showError(String message) {
        if (!message.equals(error.getText())) {
            error.showText(message);
            errorListener.run();
        }
    }

    private void showHardware() {
        hardware.setText(defaults.hardware()
                .map(list -> MESSAGES.text(
                        "hardware.own", list.fasteners().size(), list.rings().size()))
                .orElseGet(() -> MESSAGES.text("hardware.before")));
        forget.setEnabled(defaults.hardware().isPresent());
    }
}
