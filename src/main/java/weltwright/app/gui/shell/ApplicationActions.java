package weltwright.app.gui.shell;

import java.awt.event.KeyEvent;
import java.util.List;
import java.util.prefs.Preferences;
import javax.swing.ButtonGroup;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import javax.swing.JRadioButtonMenuItem;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.paper.OutputActions;
import weltwright.app.gui.photo.LensCalibrationAction;
import weltwright.app.gui.theme.Theme;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.ground.sheet.ReferenceSheet;

/** All that the user can do from the menus, with its keys; the same acts stand behind buttons. */
final class ApplicationActions {
    final RunnableAction openPhoto;
    final RunnableAction openJob;
    final RunnableAction saveSheet;
    final RunnableAction printSheet;
    final RunnableAction savePdf;
    final RunnableAction saveSvg;
    final RunnableAction saveDxf;
    final RunnableAction print;
    private final RunnableAction undo;
    private final RunnableAction redo;
    private final RunnableAction zoomIn;
    private final RunnableAction zoomOut;
    private final RunnableAction fit;
    private final JMenuBar menuBar = new JMenuBar();

    ApplicationActions(
            MainWindow window,
            JobFileActions desk,
            LensCalibrationAction phones,
            OutputActions output,
            JobModel bench,
            DisplayUnit ruler,
            Preferences memory) {
        openPhoto = new RunnableAction(
                        "Open &photo…", "A photo of the knife on the reference sheet", desk::openChosenPhoto)
                .onShift(KeyEvent.VK_O);
        openJob =
                new RunnableAction("&Open job…", "A job that was saved before", desk::openChosenJob).on(KeyEvent.VK_O);
        saveSheet = new RunnableAction(
                "Save reference &sheet…", "The sheet to lay the knife on, as a PDF", output::saveSheet);
        printSheet = new RunnableAction("Print reference shee&t…", "The sheet to lay the knife on", output::printSheet);
        savePdf = new RunnableAction("Save pattern as P&DF…", "The pattern true to size", output::savePdf)
                .onShift(KeyEvent.VK_S);
        saveSvg = new RunnableAction("Save pattern as S&VG…", "For a cutting machine, in mm", output::saveSvg);
        saveDxf = new RunnableAction("Save pattern as D&XF…", "For a cutting machine or CAD, in mm", output::saveDxf);
        print = new RunnableAction("&Print pattern…", "At actual size", output::print).on(KeyEvent.VK_P);
        undo = new RunnableAction("&Undo", "Take back the last change", bench::undo).on(KeyEvent.VK_Z);
        redo = new RunnableAction("&Redo", "Do it again after all", bench::redo).onShift(KeyEvent.VK_Z);
        zoomIn = new RunnableAction(
                        "Zoom &in",
                        "See it larger; the wheel does the same",
                        () -> window.drawing().zoomIn())
                .on(KeyEvent.VK_PLUS);
        zoomOut = new RunnableAction(
                        "Zoom &out", "See more of it", () -> window.drawing().zoomOut())
                .on(KeyEvent.VK_MINUS);
        fit = new RunnableAction(
                        "&Fit to window",
                        "See all of it",
                        () -> window.drawing().fit())
                .on(KeyEvent.VK_0);
        RunnableAction begin = new RunnableAction("&New job", "An empty job", desk::begin).on(KeyEvent.VK_N);
        RunnableAction save = new RunnableAction("&Save job", "Photo, knife, sheath and notes in one file", () -> {
                    window.takeWhatIsTyped();
                    desk.save(() -> {});
                })
                .on(KeyEvent.VK_S);
        RunnableAction saveAs = new RunnableAction("Save job &as…", "Under another name", () -> {
            window.takeWhatIsTyped();
            desk.saveAs(() -> {});
        });
        RunnableAction quit = new RunnableAction("&Quit", "Close the window", window::close).on(KeyEvent.VK_Q);
        JMenu sheets = new JMenu("Save reference sheet");
        sheets.setMnemonic('R');
        for (ReferenceSheet sheet : ReferenceSheet.values()) {
            sheets.add(new RunnableAction(
                    sheet.pageName() + "…", "To lay the knife on, as a PDF", () -> output.saveSheet(sheet)));
        }
        JMenu file = menu("&File", begin, openPhoto, openJob, null, save, saveAs, null);
        file.add(sheets);
        RunnableAction measurePhone = new RunnableAction(
                "&Measure a phone's lens…",
                "From four to eight photos of the bare sheet: later photos from that phone are measured better",
                phones::measure);
        add(file, printSheet, measurePhone, null, savePdf, saveSvg, saveDxf, print, null, quit);
        menu("&Edit", undo, redo);
        JMenu view = menu("&View", zoomIn, zoomOut, fit, null);
        rulers(view, ruler);
        view.addSeparator();
        looks(view, memory);
        menu(
                "&Help",
                new RunnableAction(
                        "&Licences…",
                        "Of the libraries and fonts that come with the program",
                        () -> LicencesDialog.show(window.frame())));
        bench.watch(() -> {
            undo.setEnabled(bench.canUndo());
            redo.setEnabled(bench.canRedo());
        });
    }

    JMenuBar menuBar() {
        return menuBar;
    }

    /** Those that stand as buttons beside the stages. */
    List<RunnableAction> handy() {
        return List.of(undo, redo, zoomOut, zoomIn, fit);
    }

    /** Whether there is a pattern to put on paper. */
    void patternIsThere(boolean there) {
        savePdf.setEnabled(there);
        saveSvg.setEnabled(there);
        saveDxf.setEnabled(there);
        print.setEnabled(there);
    }

    private JMenu menu(String name, @Nullable RunnableAction... acts) {
        JMenu menu = new JMenu(name.replace("&", ""));
        menu.setMnemonic(name.charAt(name.indexOf('&') + 1));
        add(menu, acts);
        menuBar.add(menu);
        return menu;
    }

    /** Null stands for a line between. */
    private static void add(JMenu menu, @Nullable RunnableAction... acts) {
        for (@Nullable RunnableAction act : acts) {
            if (act == null) {
                menu.addSeparator();
            } else {
                menu.add(act);
            }
        }
    }

    private static void rulers(JMenu menu, DisplayUnit ruler) {
        ButtonGroup group = new ButtonGroup();
        for (boolean inches : new boolean[] {false, true}) {
            JRadioButtonMenuItem item =
                    new JRadioButtonMenuItem(inches ? "Sizes in inches" : "Sizes in mm", ruler.inches() == inches);
            item.setMnemonic(inches ? 'H' : 'M');
            item.addActionListener(e -> ruler.take(inches));
            group.add(item);
            menu.add(item);
        }
    }

    private static void looks(JMenu menu, Preferences memory) {
        ButtonGroup group = new ButtonGroup();
        for (Theme look : Theme.values()) {
            JRadioButtonMenuItem item = new JRadioButtonMenuItem(look.words(), Theme.chosen(memory) == look);
            item.setMnemonic(look.words().charAt(0));
            item.addActionListener(e -> look.choose(memory));
            group.add(item);
            menu.add(item);
        }
    }
}
