package weltwright.job;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/** Where an order stands. */
public enum JobStatus {
    /** Neither done nor due soon. */
    WAITING,
    /** To be ready within {@value #SOON_DAYS} days, or late. */
    DUE,
    FINISHED;

    /** Chosen by eye: a sheath takes some evenings, with a night to dry. */
    static final int SOON_DAYS = 7;

    /** Returns the status of a job on a day. */
    public static JobStatus of(Job job, LocalDate today) {
        if (job.finished().isPresent()) {
            return FINISHED;
        }
        boolean soon = job.due()
                .map(day -> ChronoUnit.DAYS.between(today, day) <= SOON_DAYS)
                .orElse(false);
        return soon ? DUE : WAITING;
    }
}
