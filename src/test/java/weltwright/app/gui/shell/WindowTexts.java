package weltwright.app.gui.shell;

import java.awt.Component;
import java.awt.Container;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import javax.accessibility.AccessibleContext;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JMenu;
import javax.swing.JTable;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;
import weltwright.app.gui.leather.LeatherFiles;
import weltwright.app.gui.testing.InMemoryPreferences;
import weltwright.app.gui.testing.OpenedFiles;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.app.gui.theme.Theme;
import weltwright.job.Job;
import weltwright.job.MakerDefaultsFile;
import weltwright.job.OpenJobs;
import weltwright.job.PhoneLensStore;
import weltwright.job.RecentJobs;
import weltwright.job.StockShelf;
import weltwright.layout.stock.Stock;

/**
 * Prints each text of the window at all of its places, one a line, in UTF-8 and in the language of the process; then
 * "twice:" and the place for each mnemonic that two components of a place share. Needs a display.
 *
 * <p>Arguments: a folder for the files of the program.
 */
final class WindowTexts {
    private static final int POLL_MS = 100;
    private static final int SETTLED_MS = 500;
    private static final int TIMEOUT_MS = 20_000;

    private final Set<String> texts = new LinkedHashSet<>();
    private final MainWindow window;

    private WindowTexts(Path folder) throws Exception {
        StockShelf shelf = new StockShelf(folder.resolve("stock"));
        shelf.add(Stock.panel("1", 600, 300, OptionalDouble.empty()));
        window = onEventThread(() -> {
            Theme.LIGHT.install();
            return new Application(
                            new InMemoryPreferences(),
                            new PhoneLensStore(folder.resolve("phones")),
                            new LeatherFiles(shelf, folder.resolve("prices.json")),
                            new MakerDefaultsFile(folder.resolve("defaults.json")),
                            new OpenedFiles(),
                            new OpenJobs(folder.resolve("open-jobs")),
                            new RecentJobs(folder.resolve("recent-jobs.json")))
                    .newWindow();
        });
    }

    public static void main(String[] args) throws Exception {
        // The program's own handler of what nobody catches would keep the process.
        Thread.currentThread().setUncaughtExceptionHandler((thread, thrown) -> {
            thrown.printStackTrace();
            System.exit(1);
        });
        WindowTexts all = new WindowTexts(Files.createDirectories(Path.of(args[0])));
        all.collectAll();
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        all.texts.forEach(out::println);
        System.exit(0);
    }

    private void collectAll() throws Exception {
        onEventThread(() -> {
            window.show();
            return window;
        });
        for (Job job : List.of(OutlinedJobs.empty(), OutlinedJobs.measured(), OutlinedJobs.traced(0.7))) {
            onEventThread(() -> {
                window.model().open(job, Optional.empty());
                return job;
            });
            collectPlace();
            for (String stage : onEventThread(() -> names(window.frame(), "stage "))) {
                click(stage);
                collectPlace();
                List<String> keys = new ArrayList<>();
                onEventThread(() -> {
                    KeysTest.collect(window.frame().getRootPane(), keys);
                    return keys;
                });
                keys.stream()
                        .filter(key -> Collections.frequency(keys, key) > 1)
                        .forEach(key -> texts.add("twice: " + key + " at " + stage));
                for (String tab : onEventThread(() -> names(window.frame(), "tab "))) {
                    click(tab);
                    collectPlace();
                }
            }
        }
    }

    private void collectPlace() throws Exception {
        settle();
        onEventThread(() -> {
            add(window.frame().getTitle());
            collect(window.frame());
            return texts;
        });
    }

    private void collect(Component component) {
        if (component instanceof JLabel label) {
            add(label.getText());
        } else if (component instanceof AbstractButton button) {
            add(button.getText());
        } else if (component instanceof JTextComponent text) {
            add(text.getText());
        } else if (component instanceof JComboBox<?> box) {
            for (int i = 0; i < box.getItemCount(); i++) {
                add(String.valueOf(box.getItemAt(i)));
            }
        } else if (component instanceof JTable table) {
            collect(table);
        }
        if (component instanceof JComponent each) {
            add(each.getToolTipText());
        }
        AccessibleContext accessible = component.getAccessibleContext();
        if (accessible != null) {
            add(accessible.getAccessibleName());
            add(accessible.getAccessibleDescription());
        }
        if (component instanceof JMenu menu) {
            for (Component item : menu.getMenuComponents()) {
                collect(item);
            }
        }
        if (component instanceof Container container) {
            for (Component child : container.getComponents()) {
                collect(child);
            }
        }
    }

    private void collect(JTable table) {
        for (int column = 0; column < table.getColumnCount(); column++) {
            add(table.getColumnName(column));
            for (int row = 0; row < table.getRowCount(); row++) {
                add(String.valueOf(table.getValueAt(row, column)));
            }
        }
    }

    private void add(String text) {
        if (text != null) {
            texts.add(text.replaceAll("<[^>]*>|\\s+", " ").strip());
        }
    }

    private static List<String> names(Container container, String prefix) {
        List<String> names = new ArrayList<>();
        for (Component child : container.getComponents()) {
            if (child.isShowing() && child.getName() != null && child.getName().startsWith(prefix)) {
                names.add(child.getName());
            }
            if (child instanceof Container inner) {
                names.addAll(names(inner, prefix));
            }
        }
        return names;
    }

    private void click(String name) throws Exception {
        onEventThread(() -> {
            ((AbstractButton) find(window.frame(), name).orElseThrow()).doClick();
            return name;
        });
    }

    private static Optional<Component> find(Container container, String name) {
        for (Component child : container.getComponents()) {
            if (name.equals(child.getName())) {
                return Optional.of(child);
            }
            if (child instanceof Container inner && find(inner, name).isPresent()) {
                return find(inner, name);
            }
        }
        return Optional.empty();
    }

    /** Waits until nothing runs in the background, and a moment more. */
    private void settle() throws Exception {
        long end = System.currentTimeMillis() + TIMEOUT_MS;
        for (int quiet = 0; quiet < SETTLED_MS && System.currentTimeMillis() < end; ) {
            Thread.sleep(POLL_MS);
            quiet = onEventThread(() -> isBusy(window.frame())) ? 0 : quiet + POLL_MS;
        }
    }

    private static boolean isBusy(Container container) {
        for (Component child : container.getComponents()) {
            boolean busy = container instanceof TaskProgressBar && child.isVisible()
                    || child instanceof Container inner && isBusy(inner);
            if (busy) {
                return true;
            }
        }
        return false;
    }

    private static <T> T onEventThread(Callable<T> call) throws Exception {
        FutureTask<T> task = new FutureTask<>(call);
        SwingUtilities.invokeAndWait(task);
        return task.get();
    }
}
