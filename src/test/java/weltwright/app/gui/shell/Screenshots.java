package weltwright.app.gui.shell;

import java.awt.Component;
import java.awt.Container;
import java.awt.Graphics2D;
import java.awt.Window;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Predicate;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.swing.AbstractButton;
import javax.swing.JDialog;
import javax.swing.SwingUtilities;
import weltwright.app.gui.leather.LeatherFiles;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.app.gui.testing.InMemoryPreferences;
import weltwright.app.gui.testing.OpenedFiles;
import weltwright.app.gui.theme.Theme;
import weltwright.app.gui.upload.UploadDialog;
import weltwright.image.Photo;
import weltwright.job.CuttingPlan;
import weltwright.job.Job;
import weltwright.job.JobFields;
import weltwright.job.JobFile;
import weltwright.job.MakerDefaultsFile;
import weltwright.job.OpenJobs;
import weltwright.job.PhoneLensStore;
import weltwright.job.PriceFile;
import weltwright.job.RecentJobs;
import weltwright.job.ShelvedStock;
import weltwright.job.StockShelf;
import weltwright.layout.cost.LeatherPrice;
import weltwright.layout.stock.Stock;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.trace.ProgressListener;

/**
 * Makes screenshots of all places of the window from the sample photos: in both themes, each language of the program,
 * at 1024 × 700 and 1440 × 900, and with everything 1.25, 1.5 and 2 times as large. Needs a display.
 *
 * <p>Arguments: the folder, which is created; by default {@code target/screenshots}. With a scale as the second, in
 * this scale and the language of the process alone.
 */
final class Screenshots {
    private static final List<String> LANGUAGES = List.of("en", "de");
    private static final List<Double> SCALES = List.of(1.0, 1.25, 1.5, 2.0);
    private static final String STOCK = "shoulder 1";

    /** Longer than all but the search for a layout takes, which goes on for as long as it is let. */
    private static final int TIMEOUT_MS = 20_000;

    private static final int POLL_MS = 100;

    /** Longer than what is opened and closed with motion takes, and than pictures of choices wait. */
    private static final int SETTLED_MS = 1000;

    private final Path folder;
    private final double scale;

    /**
     * How many pixels of a picture lie on one of Swing's; Java scales so by whole numbers on Linux, FlatLaf the rest.
     */
    private final double pixels;

    private final MainWindow window;
    private final Path state = Files.createTempDirectory("screenshots");
    private final RecentJobs recentJobs = new RecentJobs(state.resolve("recent-jobs.json"));
    private Theme theme = Theme.LIGHT;

    private Screenshots(Path folder, double scale) throws Exception {
        this.folder = folder;
        this.scale = scale;
        pixels = scale == Math.rint(scale) ? scale : 1;
        window = onEventThread(() -> {
            theme.install();
            return new Application(
                            new InMemoryPreferences(),
                            new PhoneLensStore(state.resolve("phones")),
                            leather(state),
                            new MakerDefaultsFile(state.resolve("defaults.json")),
                            new OpenedFiles(),
                            new OpenJobs(state.resolve("open-jobs")),
                            recentJobs)
                    .newWindow();
        });
    }

    public static void main(String[] args) throws Exception {
        Path folder = Path.of(args.length > 0 ? args[0] : "target/screenshots");
        if (args.length < 2) {
            Files.createDirectories(folder);
            for (String language : LANGUAGES) {
                for (double scale : SCALES) {
                    if (hasBundle(language)) {
                        runInAProcess(folder, language, scale);
                    }
                }
            }
            return;
        }
        new Screenshots(folder, Double.parseDouble(args[1])).takeAll();
        System.exit(0);
    }

    private static boolean hasBundle(String language) {
        return language.equals("en")
                || Screenshots.class.getResource("/weltwright/wording/messages_" + language + ".properties") != null;
    }

    /** Scale and language hold for a process from its start. */
    private static void runInAProcess(Path folder, String language, double scale)
            throws IOException, InterruptedException {
        int code = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Duser.language=" + language,
                        scale == Math.rint(scale) ? "-Dsun.java2d.uiScale=" + scale : "-Dflatlaf.uiScale=" + scale,
                        "-classpath",
                        System.getProperty("java.class.path"),
                        Screenshots.class.getName(),
                        folder.toString(),
                        Double.toString(scale))
                .inheritIO()
                .start()
                .waitFor();
        if (code != 0) {
            throw new IOException("The screenshots in " + language + " at " + scale + " failed.");
        }
    }

    private void takeAll() throws Exception {
        onEventThread(() -> {
            window.show();
            return window;
        });
        takeInAllLooks("start");
        Job photographed = dropPoint();
        open(photographed);
        takeInAllLooks("photo");
        Job traced = photographed.traced(ProgressListener.NONE);
        open(traced);
        takeStages("folded");
        Job panels = leafBlade().traced(ProgressListener.NONE);
        open(panels);
        takeStages("panels");
        takeDialog("full-screen", () -> button("full screen").doClick());
        click("full screen"); // back into the window
        takeDialog("preferences", window::showPreferences);
        takeDialog("phone", () -> UploadDialog.show(window.frame(), photo -> {}));
        click("stage Leather");
        takeDialog("leather-from-photo", () -> button("add from photo").doClick());
        String longest = "Drop point of reindeer antler, ".repeat(4).substring(0, JobFields.KNIFE_NAME.longest());
        open(panels.withOrder(longest, longest, Optional.empty(), ""));
        takeStages("long-names");
        for (Job each : List.of(photographed, traced, panels)) {
            Path file = state.resolve(JobFile.suggestedName(each) + JobFile.EXTENSION);
            JobFile.write(each, file);
            recentJobs.put(file, WorkflowStage.SHEATH.name());
        }
        onEventThread(() -> {
            window.showHome();
            return window;
        });
        settle();
        takeInAllLooks("start-with-jobs");
    }

    /** Takes a modal dialog in both themes, and closes it. */
    private void takeDialog(String name, Runnable opening) throws Exception {
        SwingUtilities.invokeLater(opening);
        JDialog dialog = null;
        while (dialog == null) {
            Thread.sleep(POLL_MS);
            dialog = onEventThread(() -> Stream.of(Window.getWindows())
                    .filter(each -> each instanceof JDialog && each.isShowing())
                    .map(JDialog.class::cast)
                    .findFirst()
                    .orElse(null));
        }
        for (Theme each : Theme.values()) {
            theme = each;
            onEventThread(() -> {
                each.installInOpenWindows();
                return each;
            });
            settle();
            write(dialog.getRootPane(), name, dialog.getWidth(), dialog.getHeight());
        }
        SwingUtilities.invokeAndWait(dialog::dispose);
        settle();
    }

    private void takeStages(String sheath) throws Exception {
        List<String> places = names("stage ");
        for (String place : places) {
            click(place);
            List<String> tabs = names("tab ");
            if (tabs.isEmpty()) {
                takeInAllLooks(fileName(place) + "-" + sheath);
            }
            for (String tab : tabs) {
                click(tab);
                takeInAllLooks(fileName(place) + "-" + fileName(tab) + "-" + sheath);
            }
        }
    }

    private void takeInAllLooks(String name) throws Exception {
        for (Theme each : Theme.values()) {
            theme = each;
            onEventThread(() -> {
                each.installInOpenWindows();
                return each;
            });
            if (pixels == scale) {
                take(name, 1024, 700);
            }
            if (pixels == 1) {
                take(name, 1440, 900);
            }
        }
    }

    private void take(String name, int width, int height) throws Exception {
        onEventThread(() -> {
            window.frame().setSize(width, height);
            window.frame().validate();
            return name;
        });
        settle();
        write(window.frame().getRootPane(), name, width, height);
    }

    private void write(Component root, String name, int width, int height) throws Exception {
        BufferedImage image = onEventThread(() -> {
            BufferedImage painted = new BufferedImage(
                    (int) (root.getWidth() * pixels), (int) (root.getHeight() * pixels), BufferedImage.TYPE_INT_RGB);
            Graphics2D g = painted.createGraphics();
            g.scale(pixels, pixels);
            root.paint(g);
            g.dispose();
            return painted;
        });
        String file = String.join(
                "-",
                name,
                theme.name().toLowerCase(Locale.ROOT),
                Locale.getDefault().getLanguage(),
                width + "x" + height + (scale == 1 ? "" : "-at-" + Math.round(100 * scale)));
        ImageIO.write(image, "png", folder.resolve(file + ".png").toFile());
    }

    /** Waits until nothing runs in the background, and a moment more. */
    private void settle() throws Exception {
        long end = System.currentTimeMillis() + TIMEOUT_MS;
        int quiet = 0;
        while (quiet < SETTLED_MS && System.currentTimeMillis() < end) {
            Thread.sleep(POLL_MS);
            boolean busy = onEventThread(() ->
                    !find(window.frame(), TaskProgressBar.class::isInstance).isEmpty()
                            && isBusy(find(window.frame(), TaskProgressBar.class::isInstance)
                                    .get(0)));
            quiet = busy ? 0 : quiet + POLL_MS;
        }
    }

    private static boolean isBusy(Component progressBar) {
        return Stream.of(((Container) progressBar).getComponents()).anyMatch(Component::isVisible);
    }

    private void open(Job job) throws Exception {
        onEventThread(() -> {
            window.model().open(job, Optional.empty());
            return job;
        });
        settle();
    }

    private void click(String name) throws Exception {
        onEventThread(() -> {
            button(name).doClick();
            return name;
        });
        settle();
    }

    private AbstractButton button(String name) {
        return (AbstractButton)
                find(window.frame(), each -> name.equals(each.getName())).get(0);
    }

    /** Returns the names of the visible buttons that begin so. */
    private List<String> names(String prefix) throws Exception {
        return onEventThread(() -> find(
                        window.frame(),
                        each -> each instanceof AbstractButton
                                && each.isShowing()
                                && each.getName() != null
                                && each.getName().startsWith(prefix))
                .stream()
                .map(Component::getName)
                .toList());
    }

    private static List<Component> find(Container container, Predicate<Component> wanted) {
        List<Component> found = new ArrayList<>();
        for (Component child : container.getComponents()) {
            if (wanted.test(child)) {
                found.add(child);
            }
            if (child instanceof Container inner) {
                found.addAll(find(inner, wanted));
            }
        }
        return found;
    }

    private static String fileName(String buttonName) {
        return buttonName
                .toLowerCase(Locale.ROOT)
                .replaceFirst("^(stage|tab) ", "")
                .replaceAll("[^a-z0-9]+", "-");
    }

    private static <T> T onEventThread(Callable<T> call) throws InterruptedException, InvocationTargetException {
        FutureTask<T> task = new FutureTask<>(call);
        SwingUtilities.invokeAndWait(task);
        try {
            return task.get();
        } catch (ExecutionException e) {
            throw new InvocationTargetException(e.getCause());
        }
    }

    /** A panel and invented prices. */
    private static LeatherFiles leather(Path folder) {
        StockShelf shelf = new StockShelf(folder.resolve("stock"));
        Stock panel = Stock.panel(STOCK, 24 * 25.4, 12 * 25.4, OptionalDouble.empty());
        shelf.add(new ShelvedStock(
                panel,
                "vegetable tanned, natural",
                Optional.of(new LeatherPrice(new BigDecimal("32"), LeatherPrice.Per.STOCK))));
        shelf.add(Stock.panel("shoulder 2", 900, 420, OptionalDouble.empty()));
        Path prices = folder.resolve("prices.json");
        PriceFile.write(
                PriceFile.blank()
                        .withLabourPerHour(new BigDecimal("30"))
                        .withOtherHardware(new BigDecimal("0.50"))
                        .withThreadPerMetre(new BigDecimal("0.40")),
                prices);
        return new LeatherFiles(shelf, prices);
    }

    /** The measures of {@code sample-images/drop-point.args}. */
    private static Job dropPoint() {
        Job job = Job.begin(LocalDate.of(2027, 3, 1))
                .withOrder(
                        "Anouk",
                        "drop point",
                        Optional.of(LocalDate.of(2027, 3, 24)),
                        "Worn high, on the right hip. Natural leather, waxed thread in tan.")
                .withCutting(CuttingPlan.NONE.withStocks(List.of(STOCK)))
                .withPhoto(Photo.read(Path.of("sample-images", "drop-point.jpg")));
        return measured(job, 19, 3.5);
    }

    /** The measures of {@code sample-images/leaf-blade.args}. */
    private static Job leafBlade() {
        Job job = Job.begin(LocalDate.of(2027, 3, 2))
                .withOrder("Tomas", "leaf blade", Optional.of(LocalDate.of(2027, 4, 9)), "Dark brown, black thread.")
                .withCutting(CuttingPlan.NONE.withStocks(List.of(STOCK)))
                .withPhoto(Photo.read(Path.of("sample-images", "leaf-blade.jpg")))
                .withSpec(SheathSpec.standard(SheathKind.PANELS));
        return measured(job, 22, 4.2);
    }

    private static Job measured(Job job, double handleMm, double spineMm) {
        return job.withSettings(job.settings()
                .withHandleThicknessMm(OptionalDouble.of(handleMm))
                .withSpineThicknessMm(OptionalDouble.of(spineMm)));
    }
}
