package weltwright.app.gui.shell;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.prefs.Preferences;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import weltwright.app.gui.leather.LeatherFiles;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.preferences.LanguagePreference;
import weltwright.app.gui.theme.ThemeChoice;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.error.UserFacingException;
import weltwright.image.opencv.OpenCvLibraries;
import weltwright.job.AbandonedJob;
import weltwright.job.JobShelf;
import weltwright.job.MakerDefaultsFile;
import weltwright.job.OpenJobs;
import weltwright.job.PhoneLensStore;
import weltwright.job.RecentJobs;
import weltwright.job.ShelvedJob;
import weltwright.message.Language;
import weltwright.message.Messages;

/** The windows of the program, one for each open job, and what they share. Used on the event thread only. */
public final class Application {
    private static final Messages TEXTS = Messages.of(Application.class);

    /** Node of the user's preferences; independent of the package, so that stored preferences remain valid. */
    private static final String PREFERENCES = "weltwright/window";

    /** From the first window until what the first photo needs is prepared; chosen by eye. */
    private static final int PREPARED_AFTER_MS = 1000;

    private final Preferences preferences;
    private final PhoneLensStore lensStore;
    private final LeatherFiles leatherFiles;
    private final MakerDefaultsFile makerDefaults;
    private final FileOpener fileOpener;
    private final OpenJobs openJobs;
    private final RecentJobs recentJobs;
    private final DisplayUnit displayUnit;
    private final List<MainWindow> windows = new ArrayList<>();

    /**
     * @param preferences of the user: theme, unit, printer, folder
     * @param lensStore calibrated lenses
     * @param leatherFiles the maker's leather and prices
     * @param makerDefaults with which new jobs begin
     * @param fileOpener opens what was saved
     * @param openJobs keeps unsaved work
     * @param recentJobs remembers the jobs that were opened last
     */
    public Application(
            Preferences preferences,
            PhoneLensStore lensStore,
            LeatherFiles leatherFiles,
            MakerDefaultsFile makerDefaults,
            FileOpener fileOpener,
            OpenJobs openJobs,
            RecentJobs recentJobs) {
        this.preferences = preferences;
        this.lensStore = lensStore;
        this.leatherFiles = leatherFiles;
        this.makerDefaults = makerDefaults;
        this.fileOpener = fileOpener;
        this.openJobs = openJobs;
        this.recentJobs = recentJobs;
        displayUnit = new DisplayUnit(preferences);
    }

    /**
     * Opens the first window, and a job or photo in it where a file is given, and offers to restore what was not saved
     * when the program ended last. Returns at once; may be called on any thread.
     */
    public static void start(Optional<Path> file) {
        System.setProperty("apple.laf.useScreenMenuBar", "true"); // for macOS; ignored elsewhere
        SwingUtilities.invokeLater(() -> {
            Preferences preferences = Preferences.userRoot().node(PREFERENCES);
            LanguagePreference.load(preferences).ifPresent(Language::select);
            ThemeChoice.load(preferences).theme().install();
            Application application = new Application(
                    preferences,
                    PhoneLensStore.standard(),
                    LeatherFiles.standard(),
                    MakerDefaultsFile.standard(),
                    FileOpener.ofDesktop(),
                    OpenJobs.standard(),
                    RecentJobs.standard());
            MainWindow window = application.newWindow();
            window.show();
            file.ifPresent(window::openFile);
            application.offerRecovery(window);
            prepareForPhotoSoon(window);
        });
    }

    /**
     * Creates the page of the job and loads OpenCV once the window is at rest, so that the first photo need not wait
     * for them.
     */
    @SuppressWarnings("ThreadPriorityCheck") // the priority is a courtesy to what the user does meanwhile
    private static void prepareForPhotoSoon(MainWindow window) {
        Timer timer = new Timer(PREPARED_AFTER_MS, e -> {
            Thread loading = new Thread(
                    () -> {
                        try {
                            OpenCvLibraries.load();
                        } catch (UserFacingException failure) {
                            // It is told when a photo is opened, which tries again.
                        }
                    },
                    "load OpenCV");
            loading.setDaemon(true);
            loading.setPriority(Thread.MIN_PRIORITY);
            loading.start();
            window.preparePage();
        });
        timer.setRepeats(false);
        timer.start();
    }

    /** Creates a window with an empty job; the caller shows it. */
    public MainWindow newWindow() {
        MainWindow window = new MainWindow(this);
        windows.add(window);
        return window;
    }

    /** Offers in a window to restore the work of each job that was not saved when its process ended. */
    public void offerRecovery(MainWindow window) {
        window.runInBackground(TEXTS.text("application.looking-for-unsaved-work"), openJobs::abandoned, found -> {
            for (AbandonedJob job : found) {
                window.offerRecovery(job);
            }
        });
    }

    /** Returns the open windows, in the order in which they were opened. */
    public List<MainWindow> windows() {
        return List.copyOf(windows);
    }

    /** Returns the window in which a file is open. */
    Optional<MainWindow> windowOf(Path file) {
        return windows.stream()
                .filter(window ->
                        window.model().file().map(open -> isSame(open, file)).orElse(false))
                .findFirst();
    }

    private static boolean isSame(Path one, Path other) {
        try {
            return Files.isSameFile(one, other);
        } catch (IOException e) {
            return one.equals(other); // one of them is missing
        }
    }

    /** Reads all jobs of the user; takes time. */
    List<ShelvedJob> shelf() {
        List<Path> opened = recentJobs.files();
        Set<Path> folders = new LinkedHashSet<>();
        FileDialogs.lastFolder(preferences).ifPresent(folders::add);
        opened.stream().map(Path::getParent).filter(Objects::nonNull).forEach(folders::add);
        return JobShelf.read(opened, folders);
    }

    void closed(MainWindow window) {
        windows.remove(window);
    }

    /** Closes all windows, which ends the program, unless the user cancels to keep an unsaved job. */
    void quit() {
        windows().forEach(MainWindow::close);
    }

    Preferences preferences() {
        return preferences;
    }

    PhoneLensStore lensStore() {
        return lensStore;
    }

    LeatherFiles leatherFiles() {
        return leatherFiles;
    }

    MakerDefaultsFile makerDefaults() {
        return makerDefaults;
    }

    FileOpener fileOpener() {
        return fileOpener;
    }

    RecentJobs recentJobs() {
        return recentJobs;
    }

    OpenJobs openJobs() {
        return openJobs;
    }

    DisplayUnit displayUnit() {
        return displayUnit;
    }
}
