package weltwright.window;

import java.awt.event.KeyEvent;
import java.util.List;
import java.util.prefs.Preferences;
import javax.swing.ButtonGroup;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import javax.swing.JRadioButtonMenuItem;
import org.jspecify.annotations.Nullable;
import weltwright.ground.ReferenceSheet;

/** All that the user can do from the menus, with its keys; the same acts stand behind buttons. */
final class Acts {
    final Act openPhoto;
    final Act openJob;
    final Act saveSheet;
    final Act printSheet;
    final Act savePdf;
    final Act saveSvg;
    final Act saveDxf;
    final Act print;
    private final Act undo;
    private final Act redo;
    private final Act zoomIn;
    private final Act zoomOut;
    private final Act fit;
    private final JMenuBar menuBar = new JMenuBar();

    Acts(
            MainWindow window,
            JobDesk desk,
            PhoneDesk phones,
            Output output,
            Bench bench,
            Ruler ruler,
            Preferences memory) {
        openPhoto = new Act("Open &photo…", "A photo of the knife on the reference sheet", desk::openChosenPhoto)
                .onShift(KeyEvent.VK_O);
        openJob = new Act("&Open job…", "A job that was saved before", desk::openChosenJob).on(KeyEvent.VK_O);
        saveSheet = new Act("Save reference &sheet…", "The sheet to lay the knife on, as a PDF", output::saveSheet);
        printSheet = new Act("Print reference shee&t…", "The sheet to lay the knife on", output::printSheet);
        savePdf = new Act("Save pattern as P&DF…", "The pattern true to size", output::savePdf).onShift(KeyEvent.VK_S);
        saveSvg = new Act("Save pattern as S&VG…", "For a cutting machine, in mm", output::saveSvg);
        saveDxf = new Act("Save pattern as D&XF…", "For a cutting machine or CAD, in mm", output::saveDxf);
        print = new Act("&Print pattern…", "At actual size", output::print).on(KeyEvent.VK_P);
        undo = new Act("&Undo", "Take back the last change", bench::undo).on(KeyEvent.VK_Z);
        redo = new Act("&Redo", "Do it again after all", bench::redo).onShift(KeyEvent.VK_Z);
        zoomIn = new Act(
                        "Zoom &in",
                        "See it larger; the wheel does the same",
                        () -> window.drawing().zoomIn())
                .on(KeyEvent.VK_PLUS);
        zoomOut = new Act("Zoom &out", "See more of it", () -> window.drawing().zoomOut()).on(KeyEvent.VK_MINUS);
        fit = new Act("&Fit to window", "See all of it", () -> window.drawing().fit()).on(KeyEvent.VK_0);
        Act begin = new Act("&New job", "An empty job", desk::begin).on(KeyEvent.VK_N);
        Act save = new Act("&Save job", "Photo, knife, sheath and notes in one file", () -> {
                    window.takeWhatIsTyped();
                    desk.save(() -> {});
                })
                .on(KeyEvent.VK_S);
        Act saveAs = new Act("Save job &as…", "Under another name", () -> {
            window.takeWhatIsTyped();
            desk.saveAs(() -> {});
        });
        Act quit = new Act("&Quit", "Close the window", window::close).on(KeyEvent.VK_Q);
        JMenu sheets = new JMenu("Save reference sheet");
        sheets.setMnemonic('R');
        for (ReferenceSheet sheet : ReferenceSheet.values()) {
            sheets.add(new Act(sheet.pageName() + "…", "To lay the knife on, as a PDF", () -> output.saveSheet(sheet)));
        }
        JMenu file = menu("&File", begin, openPhoto, openJob, null, save, saveAs, null);
        file.add(sheets);
        Act measurePhone = new Act(
                "&Measure a phone's lens…",
                "From four to eight photos of the bare sheet: later photos from that phone are measured better",
                phones::measure);
        add(file, printSheet, measurePhone, null, savePdf, saveSvg, saveDxf, print, null, quit);
        menu("&Edit", undo, redo);
        JMenu view = menu("&View", zoomIn, zoomOut, fit, null);
        rulers(view, ruler);
        view.addSeparator();
        looks(view, memory);
        bench.watch(() -> {
            undo.setEnabled(bench.canUndo());
            redo.setEnabled(bench.canRedo());
        });
    }

    JMenuBar menuBar() {
        return menuBar;
    }

    /** Those that stand as buttons beside the stages. */
    List<Act> handy() {
        return List.of(undo, redo, zoomOut, zoomIn, fit);
    }

    /** Whether there is a pattern to put on paper. */
    void patternIsThere(boolean there) {
        savePdf.setEnabled(there);
        saveSvg.setEnabled(there);
        saveDxf.setEnabled(there);
        print.setEnabled(there);
    }

    private JMenu menu(String name, @Nullable Act... acts) {
        JMenu menu = new JMenu(name.replace("&", ""));
        menu.setMnemonic(name.charAt(name.indexOf('&') + 1));
        add(menu, acts);
        menuBar.add(menu);
        return menu;
    }

    /** Null stands for a line between. */
    private static void add(JMenu menu, @Nullable Act... acts) {
        for (@Nullable Act act : acts) {
            if (act == null) {
                menu.addSeparator();
            } else {
                menu.add(act);
            }
        }
    }

    private static void rulers(JMenu menu, Ruler ruler) {
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
        for (Look look : Look.values()) {
            JRadioButtonMenuItem item = new JRadioButtonMenuItem(look.words(), Look.chosen(memory) == look);
            item.setMnemonic(look.words().charAt(0));
            item.addActionListener(e -> look.choose(memory));
            group.add(item);
            menu.add(item);
        }
    }
}
