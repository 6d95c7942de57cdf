@NullMarked
package baymist.airflow;

import org.jspecify.annotations.NullMarked;
