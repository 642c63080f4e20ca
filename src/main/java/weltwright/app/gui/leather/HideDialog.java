package weltwright.app.gui.leather;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Component;
import java.awt.Dimension;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import javax.swing.JScrollPane;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.knife.GroundFields;
import weltwright.app.gui.knife.SheetAndLensFields;
import weltwright.app.gui.model.DerivedValue;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.photo.BackgroundImage;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.app.gui.widget.FileDropHandler;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.error.UserFacingException;
import weltwright.hide.HideSettings;
import weltwright.hide.HideTrace;
import weltwright.hide.HideTracer;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.job.PhoneLensStore;
import weltwright.job.ShelvedStock;
import weltwright.job.StockShelf;
import weltwright.layout.stock.Stock;
import weltwright.message.Messages;
import weltwright.trace.ProgressListener;
import weltwright.trace.capture.TraceSettings;
import weltwright.units.MeasureUnit;

/**
 * Puts a hide or an offcut on the shelf from a photo, in a dialog. The leather is traced beside the event thread, anew
 * with each change, and shown over the photo.
 */
final class HideDialog {
    // Chosen by eye, in px at 96 dpi.
    private static final int FORM_PX = 370;
    private static final int CANVAS_PX = 620;
    private static final int HEIGHT_PX = 560;

    private final Messages messages;
    private final Component parent;
    private final MeasureUnit unit;
    private final FileDialogs dialogs;
    private final PhoneLensStore lensStore;
    private final StockShelf shelf;
    private final Consumer<String> addedListener;
    private final ShelfDialog dialog;

    /** Holds the photo and its ground; never saved. */
    private final JobModel photoJob = new JobModel(Job.begin(LocalDate.now(ZoneId.systemDefault())));

    private final FormPanel form = new FormPanel();
    private final StockFields fields;
    private final GroundFields ground;
    private final SheetAndLensFields sheetAndLens;
    private final JCheckBox beyondGround;
    private final JCheckBox fleshUp;
    private final HideCanvas canvas;
    private final JButton takeBack;
    private final JProgressBar progress = new JProgressBar();
    private final WrappedText stateText = new WrappedText(ThemeColors::text);
    private final WrappedText error = new WrappedText(ThemeColors::error);
    private final TaskQueue tasks;
    private final DerivedValue<Input, HideTrace> trace;
    private DerivedValue.State<HideTrace> traced = new DerivedValue.State<>(Optional.empty(), "", false);
    private Optional<Photo> tracedPhoto = Optional.empty();
    private boolean savedWhenTraced;

    /** What the trace follows from. */
    private record Input(Photo photo, TraceSettings settings, HideSettings hide) {
        HideTrace trace() {
            return HideTracer.trace(photo, settings, hide, ProgressListener.NONE);
        }
    }

    /** @param addedListener receives the name of what was put on the shelf */
    HideDialog(
            Component parent,
            MeasureUnit unit,
            FileDialogs dialogs,
            PhoneLensStore lensStore,
            StockShelf shelf,
            Consumer<String> addedListener) {
        this.parent = parent;
        this.unit = unit;
        this.lensStore = lensStore;
        this.shelf = shelf;
        this.addedListener = addedListener;
        messages = Messages.of(HideDialog.class).withUnit(unit);
        dialog = new ShelfDialog(parent, messages.text("hide.title"), "hide photo", messages.text("editor.add"));
        this.dialogs = dialogs.over(dialog.window());
        tasks = new TaskQueue(this::showError);
        canvas = new HideCanvas(photoJob, this::update);
        fields = new StockFields(form, unit, Optional.empty());
        form.addFullWidth(button("choose hide photo", "hide.choose", this::choosePhoto));
        ground = new GroundFields(photoJob, form, canvas::requestFocusInWindow);
        sheetAndLens = new SheetAndLensFields(photoJob, form, ground, lensStore);
        beyondGround = checkBox("beyond ground", "hide.beyond");
        fleshUp = checkBox("flesh up", "hide.flesh_up");
        fields.addName();
        fields.addOthers();
        form.setUnit(unit);
        photoJob.setUnit(unit);
        takeBack = button("take back mark", "hide.take_back", canvas::takeBackLast);
        progress.setName("hide progress");
        progress.setIndeterminate(true);
        progress.getAccessibleContext().setAccessibleName(messages.text("hide.tracing"));
        stateText.setName("hide state");
        error.setName("hide error");
        trace = new DerivedValue<>(tasks, messages.text("hide.tracing"), this::input, Input::trace, state -> {
            traced = state;
            showState();
        });
        new DerivedValue<>(
                photoJob,
                tasks,
                messages.text("hide.opening"),
                Job::photo,
                BackgroundImage::asTaken,
                state -> canvas.setBackgroundImage(state.value()));
        photoJob.subscribe(this::update);
        fields.onThickness(this::update);
        dialog.window().getRootPane().setTransferHandler(new FileDropHandler(this::readPhoto, this::showError));
    }

    private JButton button(String name, String key, Runnable action) {
        JButton button = new JButton(messages.text(key));
        button.setName(name);
        button.setToolTipText(messages.text(key + ".tip"));
        button.addActionListener(e -> action.run());
        return button;
    }

    private JCheckBox checkBox(String name, String key) {
        JCheckBox box = new JCheckBox(messages.text(key));
        box.setName(name);
        box.setToolTipText(messages.text(key + ".tip"));
        box.addActionListener(e -> update());
        form.addFullWidth(box);
        return box;
    }

    /** Shows the dialog until it is closed. */
    void open() {
        JPanel tools = new JPanel(new MigLayout("insets 8 0 4 0, gapx 4"));
        ButtonGroup group = new ButtonGroup();
        tool(tools, group, "move", Optional.empty()).setSelected(true);
        for (HideCanvas.Kind kind : HideCanvas.Kind.values()) {
            tool(tools, group, kind.name().toLowerCase(Locale.ROOT), Optional.of(kind));
        }
        tools.add(takeBack, "gapleft 12");
        canvas.setPreferredSize(UIScale.scale(new Dimension(CANVAS_PX, HEIGHT_PX)));
        JScrollPane scroll = new JScrollPane(form);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        JPanel right = new JPanel(new WrappedTextLayout(
                "insets 0 8 0 16, fill, wrap 1, hidemode 3", "[grow,fill]", "[][grow,fill][][][]"));
        right.add(tools, "wmin 0");
        right.add(canvas, "push, grow, wmin 0, hmin 0");
        right.add(progress, "h 6!");
        right.add(stateText, "wmin 0");
        right.add(error, "wmin 0");
        JPanel body = new JPanel(new MigLayout("insets 0, fill, gap 0", "[][grow,fill]", "[grow,fill]"));
        body.add(scroll, "w " + FORM_PX + "!, growy");
        body.add(right, "push, grow, wmin 0");
        showError("");
        update();
        showState();
        dialog.open(body, parent, this::save);
        tasks.close();
    }

    private JToggleButton tool(JPanel tools, ButtonGroup group, String key, Optional<HideCanvas.Kind> kind) {
        JToggleButton tool = new JToggleButton(messages.text("hide.tool." + key));
        tool.setName("tool " + key);
        tool.setToolTipText(messages.text("hide.tool." + key + ".tip"));
        tool.addActionListener(e -> canvas.setTool(kind));
        group.add(tool);
        tools.add(tool);
        return tool;
    }

    private void choosePhoto() {
        dialogs.choosePhoto(messages.text("hide.choose.title")).ifPresent(this::readPhoto);
    }

    private void readPhoto(Path file) {
        showError("");
        tasks.submit(messages.text("hide.opening"), () -> Photo.read(file), photo -> {
            canvas.removeMarks();
            photoJob.change(job -> {
                Job with = job.withPhoto(photo);
                return with.withSettings(with.settings().withPhone(lensStore.of(photo)));
            });
        });
    }

    private Optional<Input> input() {
        return photoJob.job()
                .photo()
                .map(photo -> new Input(
                        photo,
                        photoJob.job().settings(),
                        new HideSettings(
                                fields.thicknessMm().orElse(0),
                                beyondGround.isSelected(),
                                fleshUp.isSelected(),
                                canvas.outline(),
                                canvas.lines(HideCanvas.Kind.FLAW),
                                canvas.lines(HideCanvas.Kind.POORER),
                                canvas.leastStretch())));
    }

    private void update() {
        ground.update(photoJob.job());
        sheetAndLens.update(photoJob.job());
        takeBack.setEnabled(canvas.hasMarks());
        trace.update();
    }

    private void showState() {
        boolean done = traced.value().isPresent() && !traced.computing();
        if (done) {
            tracedPhoto = photoJob.job().photo();
        }
        boolean samePhoto = tracedPhoto.equals(photoJob.job().photo());
        canvas.setFound(traced.value().filter(found -> samePhoto).map(HideTrace::seen));
        progress.setVisible(traced.computing());
        dialog.setSavable(done);
        stateText.showText(
                traced.computing()
                        ? messages.text("hide.tracing")
                        : traced.value().map(this::words).orElse(""));
        showError(traced.error(unit));
        if (done && savedWhenTraced) {
            save();
        }
        savedWhenTraced &= traced.computing();
    }

    private String words(HideTrace found) {
        return messages.text(
                "hide.found",
                new StockWording(unit).size(stock(found)),
                found.seen().holes().size(),
                found.mmPerPx());
    }

    private Stock stock(HideTrace found) {
        return new Stock(fields.name(), found.outline(), found.flaws(), found.poorer(), fields.thicknessMm());
    }

    private void save() {
        if (!dialog.commit(form)) {
            return;
        }
        if (!fields.missing().isEmpty()) {
            showError(fields.missing());
            return;
        }
        if (traced.computing()) { // a committed entry has changed what is to be traced
            savedWhenTraced = true;
            return;
        }
        traced.value().ifPresent(found -> {
            try {
                shelf.add(new ShelvedStock(stock(found), fields.kind(), fields.price()));
            } catch (UserFacingException e) {
                showError(e.getMessage());
                return;
            }
            dialog.close();
            addedListener.accept(fields.name());
        });
    }

    private void showError(String message) {
        error.showText(message);
    }
}
