package weltwright.app.gui.testing;

import java.nio.file.Path;
import java.util.Optional;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import weltwright.app.gui.leather.LeatherFiles;
import weltwright.app.gui.shell.Application;
import weltwright.app.gui.shell.MainWindow;
import weltwright.app.gui.theme.Theme;
import weltwright.io.FileVersion;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.MakerDefaultsFile;
import weltwright.job.OpenJobs;
import weltwright.job.PhoneLensStore;
import weltwright.job.RecentJobs;
import weltwright.job.StockShelf;

/**
 * The program as a process of its own that edits its job without end: five times a second it writes the next number
 * into the notes, and then prints that number and the time in ms.
 */
public final class EditingProcess {
    private static final int STEP_MS = 200;

    private EditingProcess() {}

    /** @param args the folder for notes of open jobs, and a job's file where there is one */
    public static void main(String[] args) {
        SwingUtilities.invokeLater(() -> {
            Theme.LIGHT.install();
            Application application = new Application(
                    new InMemoryPreferences(),
                    new PhoneLensStore(Path.of(args[0], "phones")),
                    new LeatherFiles(new StockShelf(Path.of(args[0], "stock")), Path.of(args[0], "prices.json")),
                    new MakerDefaultsFile(Path.of(args[0], "defaults.json")),
                    new OpenedFiles(),
                    new OpenJobs(Path.of(args[0])),
                    new RecentJobs(Path.of(args[0], "recent-jobs.json")));
            MainWindow window = application.newWindow();
            window.show();
            if (args.length > 1) {
                FileVersion version = FileVersion.of(Path.of(args[1]));
                window.model().open(JobFile.read(Path.of(args[1])), Optional.of(version));
            } else {
                window.model().open(OutlinedJobs.outlined(), Optional.empty());
            }
            int[] count = {0};
            new Timer(STEP_MS, e -> {
                        count[0]++;
                        window.model().change(job -> numbered(job, count[0]));
                        System.out.println(count[0] + " " + System.currentTimeMillis());
                    })
                    .start();
        });
    }

    private static Job numbered(Job job, int number) {
        return job.withOrder(job.customer(), job.knifeName(), job.due(), String.valueOf(number));
    }
}
