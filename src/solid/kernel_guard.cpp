#include "solid/kernel_guard.hpp"

#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_PrinterOStream.hxx>

namespace bowfront {

void silence_kernel() {
    // Once for the process, because the list of printers is not safe to change from two threads.
    static const int removed =
        Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_PrinterOStream));
    static_cast<void>(removed);
}

}  // namespace bowfront
