@NullMarked
package baymist.ledger;

import org.jspecify.annotations.NullMarked;
