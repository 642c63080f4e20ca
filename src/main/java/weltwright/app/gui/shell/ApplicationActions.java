package weltwright.app.gui.shell;

import java.awt.event.KeyEvent;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.prefs.Preferences;
import javax.swing.Action;
import javax.swing.ButtonGroup;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import javax.swing.JRadioButtonMenuItem;
import javax.swing.event.MenuEvent;
import javax.swing.event.MenuListener;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.paper.OutputActions;
import weltwright.app.gui.theme.ThemeChoice;
import weltwright.app.gui.upload.UploadDialog;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.message.Messages;

/** The actions of the menus and the tool bar, with their keys, and the menu bar. */
final class ApplicationActions {
    final RunnableAction home;
    final RunnableAction preferences;
    final RunnableAction order;
    final RunnableAction newFromPhoto;
    final RunnableAction fromPhone;
    final RunnableAction openPhoto;
    final RunnableAction openJob;
    final RunnableAction saveSheet;
    final RunnableAction printSheet;
    final RunnableAction savePdf;
    final RunnableAction saveSvg;
    final RunnableAction saveDxf;
    final RunnableAction print;
    final RunnableAction printChosenPages;
    private final RunnableAction undo;
    private final RunnableAction redo;
    private final RunnableAction zoomIn;
    private final RunnableAction zoomOut;
    private final RunnableAction fit;
    private static final Messages MESSAGES = Messages.of(ApplicationActions.class);

    private final JMenuBar menuBar = new JMenuBar();

    ApplicationActions(
            MainWindow window,
            Supplier<JobPage> page,
            JobFileActions jobFiles,
            JobModel model,
            DisplayUnit displayUnit,
            Preferences kept) {
        home = new RunnableAction(MESSAGES.text("home"), MESSAGES.text("home.tip"), window::showHome);
        order = new RunnableAction(
                MESSAGES.text("order"),
                MESSAGES.text("order.tip"),
                () -> page.get().toggleOrder());
        preferences = new RunnableAction(
                        MESSAGES.text("preferences"), MESSAGES.text("preferences.tip"), window::showPreferences)
                .withShortcut(KeyEvent.VK_COMMA);
        newFromPhoto =
                new RunnableAction(MESSAGES.text("home.photo"), MESSAGES.text("home.photo.tip"), jobFiles::choosePhoto);
        fromPhone = new RunnableAction(
                MESSAGES.text("phone"),
                MESSAGES.text("phone.tip"),
                () -> UploadDialog.show(window.frame(), jobFiles::openPhoto));
        openPhoto = new RunnableAction(
                        "Open &photo…", "A photo of the knife on the reference sheet", jobFiles::choosePhoto)
                .withShiftShortcut(KeyEvent.VK_O);
        openJob = new RunnableAction("&Open job…", "A job that was saved before", jobFiles::chooseJob)
                .withShortcut(KeyEvent.VK_O);
        saveSheet = new RunnableAction(
                "Save reference &sheet…",
                "The sheet to lay the knife on, as a PDF",
                () -> page.get().output().saveSheet());
        printSheet = new RunnableAction(
                "Print reference shee&t…",
                "The sheet to lay the knife on",
                () -> page.get().output().printSheet());
        savePdf = new RunnableAction(
                        "Save pattern as P&DF…",
                        "The pattern true to size",
                        () -> outputPattern(page.get(), OutputActions::savePdf))
                .withShiftShortcut(KeyEvent.VK_S);
        saveSvg = new RunnableAction(
                "Save pattern as SV&G…",
                "For a cutting machine, in mm",
                () -> outputPattern(page.get(), OutputActions::saveSvg));
        saveDxf = new RunnableAction(
                "Save pattern as D&XF…",
                "For a cutting machine or CAD, in mm",
                () -> outputPattern(page.get(), OutputActions::saveDxf));
        print = new RunnableAction(
                        "Pr&int pattern…", "At actual size", () -> outputPattern(page.get(), OutputActions::print))
                .withShortcut(KeyEvent.VK_P);
        printChosenPages =
                new RunnableAction("Print", "", () -> outputPattern(page.get(), OutputActions::printChosenPages));
        undo = new RunnableAction("&Undo", "Take back the last change", model::undo).withShortcut(KeyEvent.VK_Z);
        redo = new RunnableAction("&Redo", "Do it again after all", model::redo).withShiftShortcut(KeyEvent.VK_Z);
        zoomIn = new RunnableAction(
                        "Zoom &in",
                        "See it larger; the wheel does the same",
                        () -> page.get().activeCanvas().zoomIn())
                .withShortcut(KeyEvent.VK_PLUS);
        zoomOut = new RunnableAction(
                        "Zoom &out",
                        "See more of it",
                        () -> page.get().activeCanvas().zoomOut())
                .withShortcut(KeyEvent.VK_MINUS);
        fit = new RunnableAction(
                        "&Fit to window",
                        "See all of it",
                        () -> page.get().activeCanvas().zoomToFit())
                .withShortcut(KeyEvent.VK_0);
        RunnableAction newJob =
                new RunnableAction("&New job", "An empty job", jobFiles::newJob).withShortcut(KeyEvent.VK_N);
        RunnableAction save = new RunnableAction("&Save job", "Photo, knife, sheath and notes in one file", () -> {
                    window.commitFocusedField();
                    jobFiles.save(() -> {});
                })
                .withShortcut(KeyEvent.VK_S);
        RunnableAction saveAs = new RunnableAction("Save job &as…", "Under another name", () -> {
            window.commitFocusedField();
            jobFiles.saveAs(() -> {});
        });
        RunnableAction saveCopy = new RunnableAction(MESSAGES.text("save.copy"), MESSAGES.text("save.copy.tip"), () -> {
            window.commitFocusedField();
            jobFiles.saveCopy();
        });
        RunnableAction paste = new RunnableAction(
                        MESSAGES.text("paste"), MESSAGES.text("paste.tip"), jobFiles::pastePhoto)
                .withShortcut(KeyEvent.VK_V);
        RunnableAction quit =
                new RunnableAction("&Quit", "Close the window", window::close).withShortcut(KeyEvent.VK_Q);
        JMenu sheets = new JMenu("Save reference sheet");
        sheets.setMnemonic('R');
        for (ReferenceSheet sheet : ReferenceSheet.values()) {
            sheets.add(new RunnableAction(
                    sheet.pageName() + "…",
                    "To lay the knife on, as a PDF",
                    () -> page.get().output().saveSheet(sheet)));
        }
        JMenu file = menu("&File", home, newJob, openPhoto, fromPhone, openJob, null, save, saveAs, saveCopy, null);
        file.add(sheets);
        RunnableAction measureLens = new RunnableAction(
                "&Measure a phone's lens…",
                "From four to eight photos of the bare sheet: later photos from that phone are measured better",
                () -> page.get().lensCalibration().choosePhotos());
        add(file, printSheet, measureLens, null, savePdf, saveSvg, saveDxf, print, null, quit);
        menu("&Edit", undo, redo, null, paste, order, null, preferences);
        JMenu view = menu("&View", zoomIn, zoomOut, fit, null);
        addUnitItems(view, displayUnit);
        view.addSeparator();
        addThemeItems(view, kept);
        RunnableAction help = new RunnableAction(MESSAGES.text("help"), MESSAGES.text("help.tip"), window::showHelp)
                .withKey(KeyEvent.VK_F1);
        menu(
                "&Help",
                help,
                null,
                new RunnableAction(
                        MESSAGES.text("about"), MESSAGES.text("about.tip"), () -> LicencesDialog.show(window.frame())));
        setPatternAvailable(false);
        model.subscribe(() -> {
            undo.setEnabled(model.canUndo());
            redo.setEnabled(model.canRedo());
        });
    }

    private static void outputPattern(JobPage page, Consumer<OutputActions> way) {
        page.whereNoEntryIsRefused(() -> way.accept(page.output()));
    }

    JMenuBar menuBar() {
        return menuBar;
    }

    /** Returns the actions for the buttons in the window's top line in their order, by the names of their icons. */
    Map<String, Action> topLineActions() {
        Map<String, Action> actions = new LinkedHashMap<>();
        actions.put("undo", undo);
        actions.put("redo", redo);
        actions.put("zoom-out", zoomOut);
        actions.put("zoom-in", zoomIn);
        actions.put("fit", fit);
        return actions;
    }

    /** Enables the actions that need a pattern; while an entry is refused they are enabled and show it. */
    void setPatternAvailable(boolean available) {
        savePdf.setEnabled(available);
        saveSvg.setEnabled(available);
        saveDxf.setEnabled(available);
        print.setEnabled(available);
    }

    private JMenu menu(String name, @Nullable RunnableAction... actions) {
        JMenu menu = new JMenu(name.replace("&", ""));
        menu.setMnemonic(name.charAt(name.indexOf('&') + 1));
        add(menu, actions);
        menuBar.add(menu);
        return menu;
    }

    /** Adds actions; null adds a separator. */
    private static void add(JMenu menu, @Nullable RunnableAction... actions) {
        for (@Nullable RunnableAction action : actions) {
            if (action == null) {
                menu.addSeparator();
            } else {
                menu.add(action);
            }
        }
    }

    private static void addUnitItems(JMenu menu, DisplayUnit displayUnit) {
        ButtonGroup group = new ButtonGroup();
        for (boolean inches : new boolean[] {false, true}) {
            JRadioButtonMenuItem item = new JRadioButtonMenuItem(
                    inches ? "Sizes in inches" : "Sizes in mm", displayUnit.isInches() == inches);
            item.setMnemonic(inches ? 'H' : 'M');
            item.addActionListener(e -> displayUnit.setInches(inches));
            displayUnit.addListener(() -> item.setSelected(displayUnit.isInches() == inches));
            group.add(item);
            menu.add(item);
        }
    }

    private static void addThemeItems(JMenu menu, Preferences preferences) {
        ButtonGroup group = new ButtonGroup();
        for (ThemeChoice theme : ThemeChoice.values()) {
            JRadioButtonMenuItem item = new JRadioButtonMenuItem(theme.label(), ThemeChoice.load(preferences) == theme);
            item.setMnemonic(theme.label().charAt(0));
            item.addActionListener(e -> theme.select(preferences));
            menu.addMenuListener(new MenuListener() {
                @Override
                public void menuSelected(MenuEvent e) {
                    item.setSelected(ThemeChoice.load(preferences) == theme);
                }

                @Override
                public void menuDeselected(MenuEvent e) {}

                @Override
                public void menuCanceled(MenuEvent e) {}
            });
            group.add(item);
            menu.add(item);
        }
    }
}
