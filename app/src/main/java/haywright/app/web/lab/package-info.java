/**
 * The third step of the trail, Read it: a laboratory's report typed in or brought from a CSV file, beside its checks, and
 * what each lot is made of once it is kept. Start at {@link haywright.app.web.lab.ReportPages}.
 */
@NullMarked
package haywright.app.web.lab;

import org.jspecify.annotations.NullMarked;
