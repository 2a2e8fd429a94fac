package haywright.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;

/** Processor time of this whole process, compiler and collector included: a busy machine does not lengthen it. */
final class Cpu {
    private static final OperatingSystemMXBean SYSTEM =
            ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

    private Cpu() {}

    static double seconds() {
        return SYSTEM.getProcessCpuTime() / 1e9;
    }
}
