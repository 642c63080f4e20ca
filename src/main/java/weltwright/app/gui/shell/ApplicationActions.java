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
import weltwright.app.gui.widget.MnemonicText;
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
        RunnableAction openPhoto = new RunnableAction(
                        MESSAGES.text("application-actions.open-photo"),
                        MESSAGES.text("application-actions.a-photo-of-the-knife"),
                        jobFiles::choosePhoto)
                .withShiftShortcut(KeyEvent.VK_O);
        openJob = new RunnableAction(
                        MESSAGES.text("application-actions.open-job"),
                        MESSAGES.text("application-actions.a-job-that-was-saved"),
                        jobFiles::chooseJob)
                .withShortcut(KeyEvent.VK_O);
        saveSheet = new RunnableAction(
                MESSAGES.text("application-actions.save-reference-sheet"),
                MESSAGES.text("application-actions.the-sheet-to-lay-the"),
                () -> page.get().output().saveSheet());
        printSheet = new RunnableAction(
                MESSAGES.text("application-actions.print-reference-sheet"),
                MESSAGES.text("application-actions.the-sheet-to-lay-the-2"),
                () -> page.get().output().printSheet());
        savePdf = new RunnableAction(
                        MESSAGES.text("application-actions.save-pattern-as-pdf"),
                        MESSAGES.text("application-actions.the-pattern-true-to-size"),
                        () -> outputPattern(page.get(), OutputActions::savePdf))
                .withShiftShortcut(KeyEvent.VK_S);
        saveSvg = new RunnableAction(
                MESSAGES.text("application-actions.save-pattern-as-svg"),
                MESSAGES.text("application-actions.for-a-cutting-machine-in"),
                () -> outputPattern(page.get(), OutputActions::saveSvg));
        saveDxf = new RunnableAction(
                MESSAGES.text("application-actions.save-pattern-as-dxf"),
                MESSAGES.text("application-actions.for-a-cutting-machine-or"),
                () -> outputPattern(page.get(), OutputActions::saveDxf));
        print = new RunnableAction(
                        MESSAGES.text("application-actions.print-pattern"),
                        MESSAGES.text("application-actions.at-actual-size"),
                        () -> outputPattern(page.get(), OutputActions::print))
                .withShortcut(KeyEvent.VK_P);
        printChosenPages = new RunnableAction(
                MESSAGES.text("application-actions.print"),
                "",
                () -> outputPattern(page.get(), OutputActions::printChosenPages));
        undo = new RunnableAction(
                        MESSAGES.text("application-actions.undo"),
                        MESSAGES.text("application-actions.take-back-the-last-change"),
                        model::undo)
                .withShortcut(KeyEvent.VK_Z);
        redo = new RunnableAction(
                        MESSAGES.text("application-actions.redo"),
                        MESSAGES.text("application-actions.do-it-again-after-all"),
                        model::redo)
                .withShiftShortcut(KeyEvent.VK_Z);
        zoomIn = new RunnableAction(
                        MESSAGES.text("application-actions.zoom-in"),
                        MESSAGES.text("application-actions.see-it-larger-the-wheel"),
                        () -> page.get().activeCanvas().zoomIn())
                .withShortcut(KeyEvent.VK_PLUS);
        zoomOut = new RunnableAction(
                        MESSAGES.text("application-actions.zoom-out"),
                        MESSAGES.text("application-actions.see-more-of-it"),
                        () -> page.get().activeCanvas().zoomOut())
                .withShortcut(KeyEvent.VK_MINUS);
        fit = new RunnableAction(
                        MESSAGES.text("application-actions.fit-to-window"),
                        MESSAGES.text("application-actions.see-all-of-it"),
                        () -> page.get().activeCanvas().zoomToFit())
                .withShortcut(KeyEvent.VK_0);
        RunnableAction newJob = new RunnableAction(
                        MESSAGES.text("application-actions.new-job"),
                        MESSAGES.text("application-actions.an-empty-job"),
                        jobFiles::newJob)
                .withShortcut(KeyEvent.VK_N);
        RunnableAction save = new RunnableAction(
                        MESSAGES.text("application-actions.save-job"),
                        MESSAGES.text("application-actions.photo-knife-sheath-and-notes"),
                        () -> {
                            window.commitFocusedField();
                            jobFiles.save(() -> {});
                        })
                .withShortcut(KeyEvent.VK_S);
        RunnableAction saveAs = new RunnableAction(
                MESSAGES.text("application-actions.save-job-as"),
                MESSAGES.text("application-actions.under-another-name"),
                () -> {
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
        RunnableAction quit = new RunnableAction(
                        MESSAGES.text("application-actions.quit"),
                        MESSAGES.text("application-actions.close-the-window"),
                        window::close)
                .withShortcut(KeyEvent.VK_Q);
        JMenu sheets = menu(MESSAGES.text("application-actions.save-reference-sheet-2"));
        for (ReferenceSheet sheet : ReferenceSheet.values()) {
            sheets.add(new RunnableAction(
                    sheet.pageName() + "…",
                    MESSAGES.text("application-actions.to-lay-the-knife-on"),
                    () -> page.get().output().saveSheet(sheet)));
        }
        JMenu file = addMenu(
                MESSAGES.text("application-actions.file"),
                home,
                newJob,
                openPhoto,
                fromPhone,
                openJob,
                null,
                save,
                saveAs,
                saveCopy,
                null);
        file.add(sheets);
        RunnableAction measureLens = new RunnableAction(
                MESSAGES.text("application-actions.measure-a-phone-s-lens"),
                MESSAGES.text("application-actions.from-four-to-eight-photos"),
                () -> page.get().lensCalibration().choosePhotos());
        add(file, printSheet, measureLens, null, savePdf, saveSvg, saveDxf, print, null, quit);
        addMenu(MESSAGES.text("application-actions.edit"), undo, redo, null, paste, order, null, preferences);
        JMenu view = addMenu(MESSAGES.text("application-actions.view"), zoomIn, zoomOut, fit, null);
        addUnitItems(view, displayUnit);
        view.addSeparator();
        addThemeItems(view, kept);
        RunnableAction help = new RunnableAction(MESSAGES.text("help"), MESSAGES.text("help.tip"), window::showHelp)
                .withKey(KeyEvent.VK_F1);
        addMenu(
                MESSAGES.text("application-actions.help"),
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

    /** @param name see {@link MnemonicText} */
    private static JMenu menu(String name) {
        MnemonicText text = MnemonicText.of(name);
        JMenu menu = new JMenu(text.text());
        menu.setMnemonic(text.mnemonic());
        return menu;
    }

    private JMenu addMenu(String name, @Nullable RunnableAction... actions) {
        JMenu menu = menu(name);
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
            JRadioButtonMenuItem item = new JRadioButtonMenuItem(new RunnableAction(
                    MESSAGES.text(inches ? "application-actions.sizes-in-inches" : "application-actions.sizes-in-mm"),
                    "",
                    () -> displayUnit.setInches(inches)));
            item.setSelected(displayUnit.isInches() == inches);
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
