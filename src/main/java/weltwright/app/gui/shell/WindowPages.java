package weltwright.app.gui.shell;

import java.awt.CardLayout;
import java.util.List;
import javax.swing.JPanel;
import weltwright.app.gui.home.HomePage;
import weltwright.job.ShelvedJob;

/** The start page and the page of the window's job, one of which is visible. */
final class WindowPages extends JPanel {
    private static final String HOME = "home";
    private static final String JOB = "job";

    private final HomePage home;

    WindowPages(HomePage home) {
        super(new CardLayout());
        this.home = home;
        add(home, HOME);
    }

    void addJob(JPanel job) {
        add(job, JOB);
    }

    void showHome() {
        ((CardLayout) getLayout()).show(this, HOME);
    }

    void showJob() {
        ((CardLayout) getLayout()).show(this, JOB);
    }

    boolean isHomeShown() {
        return home.isVisible();
    }

    void setJobs(List<ShelvedJob> jobs) {
        home.setJobs(jobs);
    }
}
